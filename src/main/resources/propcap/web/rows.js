// Which sowings are shown and in which order, which of them are chosen, and what is done to all of these at once.
import {ask, button, el} from '/fields.js';
import {outcome} from '/outcome.js';

let text = '';
let isUnsafeOnly = false;
/** A column and whether from its end; null: as in the plan. */
let order = null;
/** Names of sowings that are chosen. */
const chosen = new Set();

const count = (n) => (n === 1 ? '1 sowing' : `${n} sowings`);

/** What a column sorts by: a number, or a text; what is empty comes last. */
function worth(page, {sowing}, key) {
  const of = outcome.of(page, sowing.name);
  if (key === 'chance') {
    return of ? of.share : null;
  }
  if (key === 'ready') {
    const sow = Date.parse(sowing.cells.sow ?? '') / 86400000;
    // Those that come ready in too few springs are the latest.
    return of && sow ? sow + (of.readyBy ?? (of.readyFrom === undefined ? 2000 : 1000) + (of.readyFrom ?? 0)) : null;
  }
  const cell = key === 'id' ? sowing.name : (sowing.cells[key] ?? '');
  const plain = cell.replace(/(?<=\d)[ ,](?=\d{3})/g, '');
  return cell === '' ? null : Number.isNaN(Number(plain)) ? cell.toLowerCase() : Number(plain);
}

function compare(a, b) {
  if (typeof a === 'number' && typeof b === 'number') {
    return a - b;
  }
  return String(a).localeCompare(String(b), 'en', {numeric: true});
}

/** The sowings that are shown, each with its row in the plan. */
export function shownRows(page) {
  const rows = page.state.sowings
    .map((sowing, row) => ({sowing, row}))
    .filter(({sowing}) => `${sowing.name} ${sowing.cells.crop}`.toLowerCase().includes(text.toLowerCase()))
    .filter(({sowing}) => !isUnsafeOnly || outcome.of(page, sowing.name)?.isSafe === false);
  if (!order) {
    return rows;
  }
  const worths = new Map(rows.map((r) => [r, worth(page, r, order.key)]));
  return rows.sort((a, b) => {
    const [x, y] = [worths.get(a), worths.get(b)];
    if (x === null || y === null) {
      return (x === null) - (y === null);
    }
    return order.isDown ? compare(y, x) : compare(x, y);
  });
}

/** All are shown again, in the plan's order: that one which is added is seen. */
export function showAll() {
  text = '';
  isUnsafeOnly = false;
  order = null;
}

/** Whether what is shown hangs on the forecast. */
export const isByOutcome = () => isUnsafeOnly || ['chance', 'ready'].includes(order?.key);

export function filters(page) {
  return [
    el('input', {
      type: 'search',
      'aria-label': 'Show only sowings with',
      placeholder: 'show only, such as tomato',
      'data-at': 'filter',
      value: text,
      oninput: (event) => {
        text = event.target.value;
        page.redraw();
      },
    }),
    button('Not safe', () => {
      isUnsafeOnly = !isUnsafeOnly;
      page.redraw();
    }, {'aria-pressed': String(isUnsafeOnly), 'data-at': 'only unsafe', title: 'Show only sowings that are at risk or lost'}),
  ];
}

/** A column's head: sorts by what stands in it, from its end, then as in the plan. */
export function head(page, keys, isNumber) {
  const sorted = keys.some(([key]) => key === order?.key) ? (order.isDown ? 'descending' : 'ascending') : null;
  return el('th', {scope: 'col', class: isNumber ? 'n' : null, 'aria-sort': sorted}, keys.map(([key, words]) => sorter(page, key, words)));
}

function sorter(page, key, words) {
  const isBy = order?.key === key;
  const next = () => {
    order = !isBy ? {key, isDown: false} : order.isDown ? null : {key, isDown: true};
    page.redraw();
  };
  const sign = isBy ? (order.isDown ? ' ▼' : ' ▲') : '';
  return button([words, el('span', {'aria-hidden': 'true'}, sign)], next, {class: 'sort', 'data-at': `sort ${key}`, title: 'Sort by this; a third time: as in the plan'});
}

/** Where the heads of the columns have no room: the same, as a list. */
export function sortList(page, columns) {
  const list = el('select', {
    'aria-label': 'In the order of',
    'data-at': 'sort list',
    onchange: (event) => {
      order = event.target.value ? {key: event.target.value, isDown: false} : null;
      page.redraw();
    },
  }, [['', 'in the order of the plan'], ['chance', 'by chance'], ['ready', 'by when it is likely ready'], ...columns.map(([key, words]) => [key, `by ${words.toLowerCase()}`])].map(([value, words]) => el('option', {value}, words)));
  list.value = order?.key ?? '';
  return list;
}

export function box(page, sowing, row) {
  return el('input', {
    type: 'checkbox',
    'aria-label': `Choose ${sowing.name || `row ${row + 1}`}`,
    'data-at': `choose ${row}`,
    checked: chosen.has(sowing.name),
    onchange: (event) => {
      chosen[event.target.checked ? 'add' : 'delete'](sowing.name);
      page.redraw();
    },
  });
}

export function boxOfAll(page, rows, at = 'choose all') {
  const isAll = rows.length > 0 && rows.every(({sowing}) => chosen.has(sowing.name));
  return el('input', {
    type: 'checkbox',
    'aria-label': 'Choose all that are shown',
    'data-at': at,
    checked: isAll,
    onchange: () => {
      rows.forEach(({sowing}) => chosen[isAll ? 'delete' : 'add'](sowing.name));
      page.redraw();
    },
  });
}

/** What can be done to all that are chosen, of those shown; nothing where none is. */
export function atOnce(page, shown) {
  const rows = shown.filter(({sowing}) => chosen.has(sowing.name));
  if (!rows.length) {
    return null;
  }
  return el(
    'div',
    {class: 'row many', role: 'group', 'aria-label': 'The sowings that are chosen'},
    el('strong', {}, `${count(rows.length)} chosen`),
    button('Sow earlier or later…', () => shift(page, rows), {'data-at': 'many shift'}),
    button('More or fewer trays…', () => trays(page, rows), {'data-at': 'many trays'}),
    button('Remove', () => remove(page, rows), {'data-at': 'many remove'}),
  );
}

function remove(page, rows) {
  // The last first: the rows before keep their place.
  const edits = rows.map(({row}) => row).sort((a, b) => b - a).map((row) => ({do: 'remove-sowing', row}));
  chosen.clear();
  page.edit(edits).then((done) => done && page.say(`${count(rows.length)} removed. Undo brings them back.`));
}

async function shift(page, rows) {
  const asked = await ask(
    `Move ${count(rows.length)}`,
    'The beds wait. Undo takes it back in one step.',
    [{key: 'days', label: 'Days later; with a minus, earlier', value: '7', isNeeded: true, pattern: '[+\\-]?\\d{1,3}', means: 'whole days, such as 7 or -7', isWide: true}],
    'Move them',
  );
  const days = asked ? String(Number(asked.days)) : '0';
  if (days !== '0') {
    const dated = rows.filter(({sowing}) => sowing.cells.sow);
    page.edit(dated.map(({row}) => ({do: 'shift', row, days})));
  }
}

async function trays(page, rows) {
  const asked = await ask(
    `Trays of ${count(rows.length)}`,
    'Each is rounded to whole trays, and keeps at least one. Undo takes it back in one step.',
    [{key: 'percent', label: 'Per cent more; with a minus, fewer', value: '10', isNeeded: true, pattern: '[+\\-]?\\d{1,3}', means: 'a whole per cent, such as 10 or -10', isWide: true}],
    'Change them',
  );
  if (!asked) {
    return;
  }
  const edits = rows
    .map(({sowing, row}) => [row, sowing.cells.trays ?? '', worth(page, {sowing}, 'trays')])
    .filter(([, , now]) => Number.isInteger(now))
    .map(([row, was, now]) => [row, was, String(Math.max(1, Math.round((now * (100 + Number(asked.percent))) / 100)))])
    .filter(([, was, trays]) => trays !== was)
    .map(([row, , trays]) => ({do: 'sowing', row, keys: {trays}}));
  if (edits.length) {
    page.edit(edits);
  } else {
    page.say('That changes no tray.');
  }
}
