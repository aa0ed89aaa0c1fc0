// The sowing plan: a table that takes what is pasted from a spreadsheet, and a time axis.
import {button, control, el} from '/fields.js';
import {chance, shows} from '/outcome.js';
import {atOnce, box, boxOfAll, filters, head, isByOutcome, showAll, shownRows, sortList} from '/rows.js';
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

/** The last columns, which are seldom changed: shown when asked for, or where one of them is wrong. */
const SELDOM = new Set(['bed-until', 'resow-until']);

let view = 'table';
let isAllColumns = false;
let shownPage = null;

document.addEventListener('outcome', () => {
  if (isByOutcome()) {
    shownPage?.redraw();
  }
});

export function sowings(page) {
  shownPage = page;
  const rows = shownRows(page);
  const turn = (to) => () => {
    view = to;
    page.redraw();
  };
  const columns = shownColumns(page);
  return [
    el(
      'div',
      {class: 'row plan'},
      button('Table', turn('table'), {'aria-pressed': String(view === 'table'), 'data-at': 'view table'}),
      button('Time axis', turn('axis'), {'aria-pressed': String(view === 'axis'), 'data-at': 'view axis'}),
      filters(page),
      view === 'table' ? button('All columns', () => { isAllColumns = !isAllColumns; page.redraw(); }, {'aria-pressed': String(isAllColumns), 'data-at': 'all columns'}) : null,
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
    el('div', {class: 'row narrow'}, sortList(page, columns), view === 'table' ? el('label', {}, boxOfAll(page, rows, 'choose all shown'), 'Choose all') : null),
    view === 'table' ? [atOnce(page, rows), table(page, rows, columns)] : timeline(page, rows),
  ];
}

function shownColumns(page) {
  const wrong = new Set(page.state.faults.filter((f) => f.list === 'sowings').map((f) => f.key));
  return COLUMNS.filter(([key]) => isAllColumns || !SELDOM.has(key) || wrong.has(key));
}

function table(page, rows, columns) {
  const heads = columns.map(([key, words]) => head(page, [[key, words]], NUMBERS.has(key)));
  heads[0].prepend(boxOfAll(page, rows));
  heads[0].classList.add('stays');
  heads.splice(1, 0, head(page, [['chance', 'Chance'], ['ready', 'Likely ready']]));
  return el(
    'div',
    {class: 'sheetbox', 'data-scroll': 'sowings', tabindex: '0', role: 'region', 'aria-label': 'The sowing plan'},
    el(
      'table',
      {class: 'edit sowings'},
      el('thead', {}, el('tr', {}, heads, el('td', {}))),
      el('tbody', {}, rows.map(({sowing, row}) => rowOf(page, sowing, row, columns, rows))),
    ),
  );
}

/** The crops to choose from; one that is written and not among them stays, and is told as wrong. */
function cropChoices(page, written) {
  const names = page.state.crops.map((c) => c.name);
  const choices = names.map((name) => [name, name]);
  return names.includes(written) ? choices : [[written, written || 'choose a crop'], ...choices];
}

function rowOf(page, sowing, row, columns, rows) {
  const isExtending = page.state.head.cells.extends;
  const cells = columns.map(([key, words]) => {
    const faults = page.faults('sowings', row, key);
    const written = sowing.cells[key] ?? '';
    const {input, fault} = control({
      at: `sowing ${row} ${key}`,
      value: written,
      choices: key === 'crop' ? cropChoices(page, written) : null,
      label: `${words} of ${sowing.name || `row ${row + 1}`}`,
      faults,
      changed: (value) => page.edit([{do: 'sowing', row, keys: {[key]: value, ...(key === 'crop' ? ofCrop(page, sowing, value) : null)}}]),
    });
    input.addEventListener('paste', (event) => pasteInto(event, page, COLUMNS, key, rows.slice(rows.findIndex((r) => r.row === row)).map((r) => r.row)));
    const look = [NUMBERS.has(key) ? 'n' : '', key === 'id' ? 'stays' : '', isExtending && sowing.own.includes(key) ? 'own' : ''].join(' ').trim();
    return el(key === 'id' ? 'th' : 'td', {class: look || null, scope: key === 'id' ? 'row' : null, 'data-label': words},
      key === 'id' ? el('div', {class: 'boxed'}, box(page, sowing, row), input) : input, fault);
  });
  cells.splice(1, 0, el('td', {class: 'outcome', 'data-label': 'Chance, and likely ready'},
    shows(page, sowing.name, el('div', {'data-came': `chance ${row}`}), chance),
    shows(page, sowing.name, el('div', {'data-came': `ready ${row}`, title: 'Between these days the plants needed are out in 8 springs of 10'}), (of) => [of?.ready ?? ''])));
  const known = new Set(columns.map(([k]) => k));
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

/** The first name of a stem that no sowing has. */
function freeName(page, stem) {
  const ids = new Set(page.state.sowings.map((s) => s.name));
  let n = 1;
  while (ids.has(`${stem}-${n}`)) {
    n++;
  }
  return `${stem}-${n}`;
}

/** Where a sowing is named after its crop, or after none, another crop names it anew; and it is of another lot. */
function ofCrop(page, sowing, crop) {
  const stem = sowing.name.replace(/-\d+$/, '');
  const isOwn = !page.state.head.cells.extends || sowing.own.includes('id');
  const isNamedByIt = isOwn && [sowing.cells.crop, 'sowing'].includes(stem) && stem !== sowing.name;
  return {...(isNamedByIt && crop ? {id: freeName(page, crop)} : null), ...(sowing.cells.lot ? {lot: ''} : null)};
}

function add(page) {
  const last = page.state.sowings.at(-1);
  const keys = last ? {...last.cells} : {};
  keys.id = freeName(page, (last?.name ?? 'sowing').replace(/-\d+$/, ''));
  showAll();
  page.edit([{do: 'add-sowing', keys}]).then(() => {
    const row = page.state.sowings.length - 1;
    document.querySelector(`[data-at="sowing ${row} id"]`)?.focus();
  });
}
