// The sowing plan: a table that takes what is pasted from a spreadsheet, and a time axis.
import {button, control, el} from '/fields.js';
import {openPaste, pasteInto} from '/paste.js';
import {timeline} from '/timeline.js';

const COLUMNS = [
  ['id', 'Sowing'],
  ['crop', 'Crop'],
  ['lot', 'Seed lot'],
  ['sow', 'Sow on'],
  ['trays', 'Trays'],
  ['plants-needed', 'Plants needed'],
  ['bed-from', 'Bed from'],
  ['bed-by', 'Bed by'],
  ['bed-until', 'Bed until'],
  ['resow-until', 'Sow again until'],
];

const NUMBERS = new Set(['trays', 'plants-needed']);

let view = 'table';
let filter = '';

export function sowings(page) {
  const rows = page.state.sowings
    .map((sowing, row) => ({sowing, row}))
    .filter(({sowing}) => `${sowing.name} ${sowing.cells.crop}`.toLowerCase().includes(filter.toLowerCase()));
  const turn = (to) => () => {
    view = to;
    page.redraw();
  };
  const search = el('input', {
    type: 'search',
    'aria-label': 'Show only sowings with',
    placeholder: 'show only, such as tomato',
    'data-at': 'filter',
    value: filter,
    oninput: (event) => {
      filter = event.target.value;
      page.redraw();
    },
  });
  return [
    el(
      'div',
      {class: 'row'},
      button('Table', turn('table'), {'aria-pressed': String(view === 'table'), 'data-at': 'view table'}),
      button('Time axis', turn('axis'), {'aria-pressed': String(view === 'axis'), 'data-at': 'view axis'}),
      search,
      button('Add a sowing', () => add(page), {'data-at': 'add sowing'}),
      button('Paste from a spreadsheet…', () => openPaste(page, COLUMNS), {'data-at': 'paste'}),
    ),
    el(
      'p',
      {class: 'hint'},
      view === 'table'
        ? 'Cells copied in a spreadsheet can be pasted into any field, many rows at once.'
        : 'Drag a handle to sow earlier or later, or move it by the arrow keys (a day) and page keys (a week). The beds wait.',
    ),
    view === 'table' ? table(page, rows) : timeline(page, rows),
  ];
}

function table(page, rows) {
  return el(
    'div',
    {class: 'sheetbox', 'data-scroll': 'sowings', tabindex: '0', role: 'region', 'aria-label': 'The sowing plan'},
    el(
      'table',
      {class: 'edit'},
      el(
        'thead',
        {},
        el('tr', {}, COLUMNS.map(([key, words]) => el('th', {scope: 'col', class: NUMBERS.has(key) ? 'n' : null}, words)), el('th', {scope: 'col'}, '')),
      ),
      el('tbody', {}, rows.map(({sowing, row}, i) => rowOf(page, sowing, row, rows.slice(i)))),
    ),
  );
}

function rowOf(page, sowing, row, below) {
  const isExtending = page.state.head.cells.extends;
  const cells = COLUMNS.map(([key, words]) => {
    const faults = page.faults('sowings', row, key);
    const {input, fault} = control({
      at: `sowing ${row} ${key}`,
      value: sowing.cells[key] ?? '',
      label: `${words} of ${sowing.name || `row ${row + 1}`}`,
      faults,
      changed: (value) => page.edit([{do: 'sowing', row, keys: {[key]: value}}]),
    });
    input.addEventListener('paste', (event) => pasteInto(event, page, COLUMNS, key, below.map((each) => each.row)));
    const look = [NUMBERS.has(key) ? 'n' : '', isExtending && sowing.own.includes(key) ? 'own' : ''].join(' ').trim();
    return el(key === 'id' ? 'th' : 'td', {class: look || null, scope: key === 'id' ? 'row' : null, 'data-label': words}, input, fault);
  });
  const known = new Set(COLUMNS.map(([k]) => k));
  const rest = page.state.faults.filter((f) => f.list === 'sowings' && f.row === row && !known.has(f.key));
  return el(
    'tr',
    {},
    cells,
    el(
      'td',
      {'data-label': 'Remove'},
      button('×', () => page.edit([{do: 'remove-sowing', row}]), {'aria-label': `Remove ${sowing.name}`, 'data-at': `remove ${row}`}),
      rest.map((f) => el('span', {class: 'fault'}, f.words)),
    ),
  );
}

function add(page) {
  const last = page.state.sowings.at(-1);
  const keys = last ? {...last.cells} : {};
  const ids = new Set(page.state.sowings.map((s) => s.name));
  const stem = (last?.name ?? 'sowing').replace(/-\d+$/, '');
  let n = 1;
  while (ids.has(`${stem}-${n}`)) {
    n++;
  }
  keys.id = `${stem}-${n}`;
  filter = '';
  page.edit([{do: 'add-sowing', keys}]).then(() => {
    const row = page.state.sowings.length - 1;
    document.querySelector(`[data-at="sowing ${row} id"]`)?.focus();
  });
}
