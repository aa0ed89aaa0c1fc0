// The crops, one at a time: how each comes up, grows, is potted on and hardens.
import {ask, button, el, field} from '/fields.js';
import {chooseCrop} from '/cropbook.js';

// A key, its label, and what an empty field means where that is no value; the values are the server's.
const GROUPS = [
  ['Tray and seed', [
    ['cells', 'Cells a tray'],
    ['seeds-per-cell', 'Seeds a cell'],
    ['germination.rate', 'Germination rate'],
    ['germination.tested-seeds', 'Seeds tested', 'none: certain'],
    ['germination.tray-correlation', 'Trays differ by'],
    ['germinate-in', 'Germinates in, best first'],
  ]],
  ['Coming up', [
    ['emergence.at', 'Measured at'],
    ['emergence.half-by', 'Half by'],
    ['emergence.most-by', 'Nine in ten by'],
    ['emergence.base', 'Base'],
    ['emergence.optimum', 'Optimum'],
    ['emergence.ceiling', 'Ceiling'],
    ['leave-at', 'Off heat at'],
    ['pull-after', 'Pulled after'],
    ['stand-window', 'Counts if up within'],
    ['fail-below', 'Failed below'],
  ]],
  ['Growing on', [
    ['growing-on.takes', 'Takes'],
    ['growing-on.at', 'at'],
    ['growing-on.base', 'Base'],
    ['growing-on.optimum', 'Optimum'],
    ['growing-on.spread', 'Spread'],
    ['growing-on.loss', 'Lost'],
    ['growing-on.damping-off.chance', 'Damping off, chance', 'none'],
    ['growing-on.damping-off.severity', 'Damping off, severity', 'none'],
    ['growing-on.holds', 'Holds'],
    ['growing-on.overheld-loss', 'Then lost'],
  ]],
  ['Potting on', [
    ['potting-on.when', 'When', 'never'],
    ['potting-on.pots-per-tray', 'Pots a tray', 'none'],
    ['potting-on.takes', 'Takes', 'none'],
    ['potting-on.holds', 'Holds', 'none'],
    ['potting-on.loss', 'Lost'],
  ]],
  ['Hardening off', [
    ['hardening.takes', 'Takes'],
    ['hardening.fit-above', 'Fit day above'],
    ['hardening.kill-below', 'Killed below'],
    ['hardening.frost-loss', 'Lost to a frost'],
    ['hardening.loss', 'Lost'],
    ['hardening.frost-risk', 'Frost risk taken'],
    ['hardening.offset', 'Days later'],
  ]],
];

const WHEN = [['', 'never'], ['never', 'never'], ['always', 'always'], ['if-held', 'if held too long']];

let chosen = '';

export function crops(page) {
  const all = page.state.crops;
  if (!all.length) {
    return [el('p', {class: 'hint'}, 'There is no crop that can be read.'), el('div', {class: 'row'}, brought(page))];
  }
  const wrong = all.findIndex((c, row) => c.name === chosen || (!chosen && page.state.faults.some((f) => f.list === 'crops' && f.row === row)));
  const row = wrong < 0 ? 0 : wrong;
  const crop = all[row];
  return [
    el(
      'div',
      {class: 'row'},
      el('label', {for: 'crop'}, 'Crop'),
      choice(page, all, crop),
      brought(page),
      button('A crop like it…', () => add(page, crop), {'data-at': 'add crop'}),
    ),
    el('p', {class: 'hint'}, 'Amounts are written with their unit. What is left empty is as shown in grey.'),
    page.faults('crops', row, '').map((f) => el('span', {class: 'fault'}, f.words)),
    ...GROUPS.map(([title, keys]) =>
      el(
        'fieldset',
        {},
        el('legend', {}, title),
        el('div', {class: 'grid2'}, keys.map(([key, label, hint]) => one(page, crop, row, key, label, hint))),
      ),
    ),
    strays(page, row),
  ];
}

function brought(page) {
  return button('Add a crop…', () => copy(page), {'data-at': 'copy crop'});
}

async function copy(page) {
  const name = await chooseCrop(page, GROUPS);
  if (name) {
    chosen = name;
    await page.edit([{do: 'copy-crop', name}]);
  }
}

function choice(page, all, crop) {
  const select = el(
    'select',
    {
      id: 'crop',
      'data-at': 'crop',
      onchange: (event) => {
        chosen = event.target.value;
        page.redraw();
      },
    },
    all.map((c, row) => {
      const isWrong = page.state.faults.some((f) => f.list === 'crops' && f.row === row);
      return el('option', {value: c.name}, isWrong ? `${c.name} (to mend)` : c.name);
    }),
  );
  select.value = crop.name;
  return select;
}

function one(page, crop, row, key, label, hint) {
  const value = crop.cells[key] ?? '';
  const isWhen = key === 'potting-on.when' && WHEN.some(([word]) => word === value);
  return field({
    at: `crop ${crop.name} ${key}`,
    value,
    label,
    hint: hint ?? page.state.defaults.crop[key],
    isOwn: page.state.head.cells.extends && crop.own.includes(key),
    isWide: key === 'germinate-in',
    choices: isWhen ? WHEN.slice(value === '' ? 0 : 1).filter(([w]) => value !== '' || w !== 'never') : undefined,
    faults: page.faults('crops', row, key),
    changed: (text) => page.edit([{do: 'crop', name: crop.name, key, value: text}]),
  });
}

/** Faults of keys that have no field here. */
function strays(page, row) {
  const known = new Set(GROUPS.flatMap(([, keys]) => keys.map(([key]) => key)));
  return page.state.faults
    .filter((f) => f.list === 'crops' && f.row === row && f.key && !known.has(f.key))
    .map((f) => el('span', {class: 'fault'}, `${f.where}: ${f.words}`));
}

async function add(page, crop) {
  const asked = await ask(
    `A crop like ${crop.name}`,
    'It starts with the same numbers; change what you know better.',
    [{key: 'name', label: 'Its name', isNeeded: true, isWide: true}],
    'Add it',
  );
  if (asked) {
    chosen = asked.name;
    await page.edit([{do: 'add-crop', name: asked.name, like: crop.name}]);
  }
}
