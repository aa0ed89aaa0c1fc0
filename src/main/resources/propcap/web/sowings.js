// The sowing plan: a table that takes what is pasted from a spreadsheet, and a time axis.
import {button, control, el} from '/fields.js';
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
    ),
    el(
      'p',
      {class: 'hint'},
      view === 'table'
        ? 'Cells copied in a spreadsheet can be pasted into any field, many rows at once. Dates are such as 2027-03-28.'
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
      el('tbody', {}, rows.map(({sowing, row}) => rowOf(page, sowing, row))),
    ),
  );
}

function rowOf(page, sowing, row) {
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
    input.addEventListener('paste', (event) => paste(event, page, row, key));
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

/** A date as spreadsheets show it, as the files write it; anything else as it is. */
function plain(key, text) {
  const trimmed = text.trim();
  const day = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(trimmed);
  if (day) {
    return `${day[3]}-${day[2].padStart(2, '0')}-${day[1].padStart(2, '0')}`;
  }
  return NUMBERS.has(key) ? trimmed.replace(/^(\d{1,3})(?:[ ,](\d{3}))+$/, (all) => all.replace(/[ ,]/g, '')) : trimmed;
}

/** Fills fields from one on, row by row, from what a spreadsheet gave; new rows come at the end. */
function paste(event, page, row, key) {
  const text = event.clipboardData.getData('text/plain').replace(/\r\n?/g, '\n').replace(/\n$/, '');
  if (!text.includes('\t') && !text.includes('\n')) {
    return;
  }
  event.preventDefault();
  const keys = COLUMNS.map(([k]) => k);
  let lines = text.split('\n').map((line) => line.split('\t'));
  let columns = keys.slice(keys.indexOf(key));
  const header = lines[0].map((cell) => cell.trim().toLowerCase());
  if (header.some((cell) => keys.includes(cell)) && header.every((cell) => cell === '' || keys.includes(cell))) {
    columns = header;
    lines = lines.slice(1);
  }
  const edits = [];
  lines.forEach((cells, i) => {
    const to = row + i;
    const values = cells.slice(0, columns.length).map((cell, c) => [columns[c], plain(columns[c], cell)]).filter(([k]) => k);
    if (to < page.state.sowings.length) {
      const changed = values.filter(([k, value]) => value !== (page.state.sowings[to].cells[k] ?? ''));
      if (changed.length) {
        edits.push({do: 'sowing', row: to, keys: Object.fromEntries(changed)});
      }
    } else {
      edits.push({do: 'add-sowing', keys: Object.fromEntries(values)});
    }
  });
  if (edits.length) {
    page.edit(edits).then((done) => done && page.say(`Pasted ${lines.length} rows. Undo takes them back.`));
  }
}
