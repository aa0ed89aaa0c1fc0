// What plants and trays are worth and cost, and the hands that there are: each with what it is and where one gets it.
import {ask, button, el, field} from '/fields.js';

/** A key, its label, and what it is, where one gets it and what is usual. */
const MONEY = [
  ['currency', 'Currency', 'What all amounts are in, by its letters or sign, such as EUR. Scenarios that are compared name the same one.'],
  ['tray', 'A tray sown', 'Seed and mix for one tray, from your seed and mix bills divided by the trays they filled. A crop with dear seed may have its own below.'],
  ['pot-tray', 'A tray of pots', 'Pots and mix for one tray of pots; the work of potting too, if you count it here and not by the hour.'],
  ['hour', 'An hour of work', 'What an hour in the rounds costs you, wages with all that comes on top. The hours worked are charged. Left empty, work costs nothing.', '0'],
  ['discount', 'Money counts less, a year', 'By how much money counts less for each year that it comes later: what you pay your bank for a loan, such as 6 %. Left empty, 0 %.', '0 %'],
  ['sell-surplus', 'Plants beyond those needed', 'Whether somebody buys the plants that you have over. If not, they are worth nothing.'],
];

const PLANT = [
  ['worth', 'On time', 'What a plant is worth that is out on time: what its crop brings in, less what it still costs from there to the sale; or what you sell the plant for.'],
  ['late', 'Late', 'What it is worth when it is out late: the price of a later market, or 0 where a late plant is no use.'],
  ['short', 'Short', 'What each plant costs that is needed and lacking: what a neighbour or nursery takes for one.'],
];

const HANDS = [
  ['hours', 'Hours a working day', 'Of all people together, for the rounds alone, such as 12/day. Each round goes on until they are gone, the rest waits for the next working day. Left empty, there are always hands enough, and hours are only counted.', 'not limited'],
  ['minutes.sow', 'To sow', 'A tray: filled, sown and set into the heat. Usual: 35 + 144 s a flat for a small grower by hand (Rutgers NJAES, “Bedding Plants, Greenhouse Costs of Production Budget”, table 2).'],
  ['minutes.move', 'To move', 'A tray, off the heat or out to harden. Usual: 40 s a flat to the work area (the same table).'],
  ['minutes.thin', 'To thin', 'A tray sown with several seeds a cell. What stands here in grey is a planning default, not measured.'],
  ['minutes.pot-on', 'To pot on', 'A plant. Usual: 282 cuttings an hour for the slowest of 14 growers, 1,360 for the quickest (Fisher, Adegbola and Hodges, “Maximize Your Labor Efficiency When Sticking Plant Cuttings”, Greenhouse Grower).'],
  ['minutes.plant-out', 'To plant out', 'A plant. What stands here in grey is a planning default, not measured.'],
];

const EXTRA = [
  ['from', 'From', 'The first day that they come, such as 2027-04-05.', 'such as 2027-04-05'],
  ['until', 'Until', 'The last day; it counts too.', 'such as 2027-04-17'],
  ['hours', 'Hours a working day', 'Of all who come besides, together, such as 8/day. They are added to the usual hours.', 'such as 8/day'],
];

const SURPLUS = [['', 'not sold'], ['false', 'not sold'], ['true', 'sold too']];

export const isOfMoney = (fault) => fault.list === '' && /^(money|labour)(\.|$)/.test(fault.key);

const isAsked = (page) => Object.keys(page.state.head.cells).some((key) => key.startsWith('money.'));

export function money(page) {
  return [
    el('fieldset', {}, el('legend', {}, 'Money'), isAsked(page) ? prices(page) : none(page)),
    el(
      'fieldset',
      {},
      el('legend', {}, 'Hands'),
      el('p', {class: 'hint'}, 'Minutes are those of one pair of hands, such as 4/tray or 0.3/plant. Time a morning of your own: these differ between farms more than anything else here. Left empty, they are as shown in grey.'),
      HANDS.map(([key, label, help, hint]) => one(page, `labour.${key}`, label, help, {hint: hint ?? page.state.defaults.head[`labour.${key}`]})),
      el('h3', {}, 'Weeks with extra people'),
      el('p', {class: 'hint'}, 'When more hands come than usual, such as helpers in April. They count only where the hours of a usual working day are given above; where two lines meet, their hours add up.'),
      extraRows(page).map((row) => extra(page, row)),
      faultsOfHands(page).map((f) => el('span', {class: 'fault'}, `${f.where}: ${f.words}`)),
      el('div', {class: 'row'}, button('Add extra people…', () => addExtra(page), {'data-at': 'add extra'})),
    ),
  ];
}

/** The numbers of the weeks that are written. */
function extraRows(page) {
  const keys = Object.keys(page.state.head.cells).filter((key) => key.startsWith('labour.extra.'));
  return [...new Set(keys.map((key) => Number(key.split('.')[2])))];
}

function extra(page, row) {
  const title = `Line ${row + 1}`;
  return el(
    'div',
    {role: 'group', 'aria-label': `Extra people, ${title.toLowerCase()}`, 'data-extra': row},
    el('h4', {}, title),
    EXTRA.map(([key, label, help, hint]) =>
      one(page, `labour.extra.${row}.${key}`, label, help, {
        hint,
        changed: (value) => page.edit([{do: 'extra', row, keys: {[key]: value}}]),
      }),
    ),
    el('div', {class: 'row'}, button('Remove', () => page.edit([{do: 'remove-extra', row}]), {'aria-label': `Remove extra people, ${row + 1}`, 'data-at': `remove extra ${row}`})),
  );
}

async function addExtra(page) {
  const asked = await ask(
    'Extra people',
    'They come besides the usual hands; both days are included.',
    EXTRA.map(([key, label, , hint]) => ({key, label, hint, isNeeded: true})),
    'Add them',
  );
  if (asked) {
    await page.edit([{do: 'add-extra', keys: asked}]);
  }
}

/** Faults of hands that have no field here. */
function faultsOfHands(page) {
  const shown = new Set([...HANDS.map(([key]) => `labour.${key}`), ...extraRows(page).flatMap((row) => EXTRA.map(([key]) => `labour.extra.${row}.${key}`))]);
  return page.state.faults.filter((f) => f.list === '' && /^labour(\.|$)/.test(f.key) && !shown.has(f.key));
}

function none(page) {
  return [
    el('p', {class: 'hint'}, 'No prices are given, so answers tell of plants alone. With prices the forecast has a margin, and a comparison tells whether a change pays. What a place costs stands with the place.'),
    el('div', {class: 'row'}, button('Add prices…', () => add(page), {'data-at': 'add prices'})),
  ];
}

async function add(page) {
  const label = {tray: 'Seed and mix for a tray', 'pot-tray': 'A tray of pots', worth: 'A plant on time', late: 'A late plant', short: 'A plant short'};
  const asked = await ask(
    'Add prices',
    'Your own figures, as plain numbers such as 0.30. They are for all crops; a crop may have its own afterwards, where each is explained.',
    [{key: 'currency', label: 'Currency, such as EUR', isNeeded: true}, ...Object.entries(label).map(([key, words]) => ({key, label: words, isNeeded: true}))],
    'Add them',
  );
  if (asked) {
    await page.edit([
      ...['currency', 'tray', 'pot-tray'].map((key) => ({do: 'head', key: `money.${key}`, value: asked[key]})),
      ...PLANT.map(([key]) => ({do: 'price', name: 'default', key, value: asked[key]})),
    ]);
  }
}

/** One's own value, its faults, and beside it what it is. */
function one(page, key, label, help, more = {}) {
  const {cells, own} = page.state.head;
  return el(
    'div',
    {class: 'helped'},
    field({
      at: `head ${key}`,
      value: cells[key] ?? '',
      label,
      isOwn: cells.extends && own.includes(key),
      faults: page.state.faults.filter((f) => isOfMoney(f) && f.key === key),
      changed: (value) => page.edit([{do: 'head', key, value}]),
      ...more,
    }),
    el('p', {class: 'hint'}, help),
  );
}

function prices(page) {
  const {cells} = page.state.head;
  const priced = pricedCrops(page);
  const shown = new Set([...MONEY.map(([key]) => `money.${key}`), ...priced.flatMap((name) => [...PLANT.map(([key]) => key), 'tray'].map((key) => `money.plants.${name}.${key}`))]);
  const others = page.state.crops.map((c) => c.name).filter((name) => !priced.includes(name));
  return [
    el('p', {class: 'hint'}, 'Amounts are plain numbers with a dot, such as 0.30.'),
    page.state.faults.filter((f) => isOfMoney(f) && f.key.startsWith('money') && !shown.has(f.key)).map((f) => el('span', {class: 'fault'}, `${f.where}: ${f.words}`)),
    MONEY.map(([key, label, help, hint]) =>
      one(page, `money.${key}`, label, help, {
        hint,
        ...(key === 'sell-surplus' ? {choices: SURPLUS.filter(([v]) => v !== (cells['money.sell-surplus'] === undefined ? 'false' : ''))} : {}),
      }),
    ),
    el('h3', {}, 'A plant'),
    priced.map((name) => plant(page, name)),
    others.length
      ? el('div', {class: 'row'}, button('A crop’s own prices…', () => addCrop(page, others), {'data-at': 'add crop prices'}))
      : null,
  ];
}

/** Those that have prices; default, for all others, first. */
function pricedCrops(page) {
  const names = Object.keys(page.state.head.cells)
    .filter((key) => key.startsWith('money.plants.'))
    .map((key) => key.slice('money.plants.'.length, key.lastIndexOf('.')));
  return [...new Set(['default', ...names])];
}

function plant(page, name) {
  const title = name === 'default' ? 'Of all crops without prices of their own' : `Of ${name}`;
  const rows = name === 'default' ? PLANT : [...PLANT, ['tray', 'A tray sown', 'Seed and mix for a tray of this crop; left empty, as above.']];
  return [
    el('h4', {}, title),
    rows.map(([key, label, help]) =>
      one(page, `money.plants.${name}.${key}`, label, help, {
        changed: (value) => page.edit([{do: 'price', name, key, value}]),
      }),
    ),
  ];
}

async function addCrop(page, others) {
  const asked = await ask(
    'A crop’s own prices',
    'They stand in the place of those for all crops.',
    [{key: 'name', label: 'Crop', choices: others.map((name) => [name, name])}, ...PLANT.map(([key, label]) => ({key, label, isNeeded: true}))],
    'Add them',
  );
  if (asked) {
    await page.edit(PLANT.map(([key]) => ({do: 'price', name: asked.name, key, value: asked[key]})));
  }
}
