// The places: how many trays fit, how warm it is, what they cost.
import {ask, button, el, field} from '/fields.js';

const KINDS = {
  'heat-bench': 'heat bench',
  chamber: 'chamber',
  table: 'table',
  hardening: 'hardening',
};

const CLIMATES = [
  ['constant', 'constant'],
  ['heat-to', 'heated'],
  ['outdoor', 'outdoors'],
];

const FRESH_CLIMATE = {
  constant: {constant: '21 C'},
  'heat-to': {'heat-to': '14 C', lift: '5', 'vent-at': '26 C'},
  outdoor: {outdoor: 'true'},
};

const COST = [
  ['buy', 'To buy, all of it', 'such as 5200'],
  ['lasts', 'Lasts', 'such as 12 years'],
  ['keep', 'Upkeep, all of it', 'such as 150/year'],
  ['run', 'Power and fuel', 'such as 3.60/day'],
];

/** In a dialog: what the files take for a number of spaces. */
const SPACES = {
  key: 'spaces',
  label: 'Spaces for trays',
  isNeeded: true,
  pattern: '\\s*[0-9]{1,6}\\s*',
  means: 'a whole number, such as 40',
};

export function places(page) {
  const all = page.state.places.map((place, row) => placeOf(page, place, row));
  return [
    el('p', {class: 'hint'}, 'A space holds one tray. Amounts are written with their unit, such as 21 C or 8 %/day.'),
    el('p', {class: 'hint'}, 'Trays go to the first table in this order that has room, and out to the first hardening area that has room. Where a crop germinates, its own list says. Move a place up to fill it sooner.'),
    ...all,
    el('div', {class: 'row'}, button('Add a place…', () => add(page), {'data-at': 'add place'})),
  ];
}

function placeOf(page, place, row) {
  const {name, cells, own} = place;
  const of = (key, label, more = {}) =>
    field({
      at: `place ${name} ${key}`,
      value: cells[key] ?? '',
      label,
      hint: page.state.defaults.place[key],
      isOwn: page.state.head.cells.extends && own.includes(key),
      faults: page.faults('places', row, key),
      changed: (value) => page.edit([{do: 'place', name, key, value}]),
      ...more,
    });
  const sort = 'climate.constant' in cells ? 'constant' : 'climate.outdoor' in cells ? 'outdoor' : 'heat-to';
  const isClosed = cells.spaces === '0';
  const kinds = page.state.kinds.map((k) => [k, KINDS[k] ?? k]);
  const known = new Set(['', 'spaces', 'kind', 'stretch-loss', ...COST.map(([k]) => `cost.${k}`)]);
  const rest = page.state.faults.filter(
    (f) => f.list === 'places' && f.row === row && !known.has(f.key) && !f.key.startsWith('climate.'),
  );
  return el(
    'fieldset',
    {'data-place': name},
    el('legend', {}, name, isClosed ? el('small', {}, ' (closed)') : null),
    el(
      'div',
      {class: 'grid2'},
      field({
        at: `place-name ${row}`,
        value: refused?.name === name ? refused.to : name,
        label: 'Name',
        faults: refused?.name === name ? [refused] : [],
        changed: (to) => rename(page, name, to),
      }),
      of('spaces', 'Spaces for trays'),
      of('kind', 'Kind', {choices: kinds}),
      field({
        at: `place ${name} climate`,
        value: sort,
        label: 'Climate',
        choices: CLIMATES,
        changed: (value) => page.edit([{do: 'climate', name, keys: FRESH_CLIMATE[value]}]),
      }),
      sort === 'constant' ? of('climate.constant', 'Kept at') : null,
      sort === 'heat-to' ? of('climate.heat-to', 'Heated to') : null,
      sort === 'heat-to' ? of('climate.lift', 'Sun lifts by, °C') : null,
      sort === 'heat-to' ? of('climate.vent-at', 'Vents at') : null,
      of('stretch-loss', 'Leggy loss'),
    ),
    [...page.faults('places', row, ''), ...rest].map((f) => el('span', {class: 'fault'}, f.words)),
    el(
      'details',
      {class: 'small', 'data-open': `cost ${name}`, open: COST.some(([k]) => page.faults('places', row, `cost.${k}`).length)},
      el('summary', {}, COST.some(([k]) => cells[`cost.${k}`]) ? `Cost: ${cells['cost.buy'] ?? '?'} to buy` : 'Cost'),
      el('p', {class: 'hint'}, `All of this is for the place as it is, with all its ${cells.spaces ?? ''} spaces, not for one of them.`),
      el('div', {class: 'grid2'}, COST.map(([k, label, hint]) => of(`cost.${k}`, label, {hint}))),
    ),
    el(
      'div',
      {class: 'row'},
      mover(page, row, name, true),
      mover(page, row, name, false),
      button('Add another like it…', () => addLike(page, place), {'data-at': `like ${name}`}),
      isClosed
        ? null
        : button('Close it', () => page.edit([{do: 'place', name, key: 'spaces', value: '0'}]), {
            'data-at': `close place ${name}`,
          }),
      place.isOwn
        ? button('Remove', () => page.edit([{do: 'remove-place', name}]), {'aria-label': `Remove ${name}`})
        : null,
    ),
  );
}

/** A new name that was refused, and why; it stays in its field until there is another. */
let refused = null;

/** All that names it follows. */
async function rename(page, name, to) {
  refused = null;
  if (to === name) {
    page.redraw();
  } else if (to === '') {
    refused = {name, to, words: `a place needs a name; it is still ${name}`};
    page.redraw();
  } else {
    await page.edit([{do: 'rename-place', name, to}], (words, {why = words}) => {
      refused = {name, to, words: `${why}; it is still ${name}`};
    });
  }
}

/** One up or down; the button goes along with its place, so that it can be pressed again. */
function mover(page, row, name, isUp) {
  const isLast = isUp ? row === 0 : row === page.state.places.length - 1;
  return button(isUp ? '↑ Move up' : '↓ Move down', () => isLast || page.edit([{do: 'move-place', name, up: String(isUp)}]), {
    'aria-label': `Move ${name} ${isUp ? 'up' : 'down'}`,
    'data-at': `move ${isUp ? 'up' : 'down'} ${name}`,
    'aria-disabled': isLast ? 'true' : null,
  });
}

function nextName(page, name) {
  const stem = name.replace(/ \d+$/, '');
  let n = 2;
  while (page.state.places.some((p) => p.name === `${stem} ${n}`)) {
    n++;
  }
  return `${stem} ${n}`;
}

async function addLike(page, place) {
  const asked = await ask(
    `Another like ${place.name}`,
    'It has the same climate and kind, and every crop that germinates there may use it too. Say what all of it costs, and the comparison tells whether it pays.',
    [
      {key: 'name', label: 'Its name', value: nextName(page, place.name), isNeeded: true},
      {...SPACES, value: place.cells.spaces},
      ...COST.map(([k, label, hint]) => ({key: `cost.${k}`, label, hint, value: place.cells[`cost.${k}`] ?? ''})),
    ],
    'Add it',
  );
  if (asked) {
    const {name, ...keys} = asked;
    if (keys.spaces === place.cells.spaces) {
      delete keys.spaces;
    }
    await page.edit([{do: 'add-place', keys: {name, like: place.name, after: place.name, ...keys}}]);
  }
}

async function add(page) {
  const asked = await ask(
    'A new place',
    'A crop uses it once the crop is told to germinate there; tables and hardening areas are used by all.',
    [
      {key: 'name', label: 'Its name', isNeeded: true},
      {key: 'kind', label: 'Kind', choices: page.state.kinds.map((k) => [k, KINDS[k] ?? k])},
      {...SPACES, value: '40'},
      {key: 'climate', label: 'Climate', choices: CLIMATES},
    ],
    'Add it',
  );
  if (asked) {
    const {climate, ...keys} = asked;
    for (const [key, value] of Object.entries(FRESH_CLIMATE[climate])) {
      keys[`climate.${key}`] = value;
    }
    await page.edit([{do: 'add-place', keys}]);
  }
}
