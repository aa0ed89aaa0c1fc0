// The season so far: where the trays stand, what was done with them, and from which day the forecast goes on.
import {post} from '/server.js';
import {button, el, field} from '/fields.js';

/** As the log has it, and as it is said. */
const EVENTS = {
  sown: 'sown',
  counted: 'counted in the heat',
  'off-heat': 'off the heat',
  outbreak: 'damping-off seen',
  ready: 'ready',
  'potted-on': 'potted on',
  'moved-out': 'moved out to harden',
  'planted-out': 'planted out',
  'thrown-out': 'thrown out',
};

const MOST_SHOWN = 30;

/** What is filled in beside each group of trays, and not written yet. */
const filled = new Map();

let isAllShown = false;

const trays = (n) => (n === 1 ? '1 tray' : `${n} trays`);

export function sofar(page) {
  const {soFar} = page.state;
  if (!soFar.file) {
    return [
      el('p', {class: 'hint'}, 'Keep a log of what moves, and the forecast, the what-ifs and the questions go on from the trays that stand in the house today. A line speaks of as many trays as you like.'),
      el('div', {class: 'row'}, button('Keep a log', () => begin(page), {class: 'main', 'data-at': 'keep log'})),
    ];
  }
  return [day(page), soFar.isWinter ? [] : standing(page), soFar.isLogged ? other(page) : null, written(page)].flat(2);
}

/** The log is of the house, so the plan itself names it. */
function begin(page) {
  return page.run(() => post('/api/edit', {file: page.state.base, version: page.state.version, edits: [{do: 'keep-log'}]}));
}

function day(page) {
  const {soFar} = page.state;
  const turn = (more) => {
    const now = {day: soFar.isChosen ? soFar.today : '', winter: soFar.isWinter, overfull: soFar.isOverfull};
    return page.run(() => post('/api/day', {...now, ...more}));
  };
  return el(
    'fieldset',
    {},
    el('legend', {}, 'Today'),
    el('div', {class: 'grid2'}, field({at: 'today', label: 'The day', value: soFar.today, hint: 'such as 2027-04-10', changed: (value) => turn({day: value, winter: false})})),
    el('p', {id: 'from-today'}, soFar.line || 'Where the trays stand is known once all is mended.'),
    el('p', {class: 'hint'}, 'Once something is written of this day its round is over, and the forecast goes on from the next morning: so write all that moved. A day outside the season is taken for its nearest.'),
    el(
      'div',
      {class: 'row'},
      button('Before the season', () => turn({winter: true}), {'aria-pressed': String(soFar.isWinter), 'data-at': 'winter'}),
      button('The clock’s day', () => turn({day: '', winter: false}), {'aria-pressed': String(!soFar.isChosen && !soFar.isWinter), 'data-at': 'clock'}),
      button('Go on though places are overfull', () => turn({overfull: !soFar.isOverfull}), {'aria-pressed': String(soFar.isOverfull), 'data-at': 'overfull'}),
    ),
  );
}

function standing(page) {
  const {groups} = page.state.soFar;
  return [
    el('h3', {}, 'What stands, and what is due'),
    groups.length ? null : el('p', {class: 'hint'}, page.state.faults.length ? 'It is known once all is mended: below, Take back or Undo.' : 'Nothing stands and nothing is due within a week.'),
    groups.map((group) => groupOf(page, group)),
  ];
}

function groupOf(page, group) {
  const where = group.place ? `${group.stage}, ${group.place}` : group.stage;
  const name = [group.sowing, group.stage, group.place].filter(Boolean).join(' ');
  return el(
    'fieldset',
    {class: 'group', 'data-group': name},
    el('legend', {}, `${group.sowing}: ${trays(group.trays.length)} `, el('small', {}, where)),
    form(page, name, {event: group.next[0].event, trays: String(group.trays.length)}, (of, draft) => {
      const next = group.next.find((n) => n.event === draft.event) ?? group.next[0];
      return [
        of('event', 'What came', {value: next.event, choices: group.next.map((n) => [n.event, EVENTS[n.event]])}),
        of('trays', `Trays, of ${group.trays.length}`),
        ...common(page, of, next.event, next.places),
      ];
    }, (draft) => rows(page, group, draft)),
  );
}

/** What a row can have besides, in the columns of the log. */
function common(page, of, event, places) {
  const has = (column) => page.state.soFar.columns.includes(column);
  return [
    event === 'moved-out' || event === 'planted-out' ? null : of('plants', 'Plants in each', {hint: 'not counted'}),
    has('place') && places.length ? of('place', 'Where to', {choices: [['', 'the first with room'], ...places.map((p) => [p, p])]}) : null,
    of('date', 'On'),
  ];
}

/** What the grids hold is kept while the page is redrawn, until it is written. */
function form(page, name, fresh, fields, rowsOf) {
  const draft = () => ({date: page.state.soFar.today, plants: '', place: '', ...fresh, ...filled.get(name)});
  const of = (key, label, more = {}) =>
    field({
      at: `log ${name} ${key}`,
      label,
      value: draft()[key] ?? '',
      changed: (value) => {
        filled.set(name, {...filled.get(name), [key]: value, ...(key === 'event' ? {place: ''} : {})});
        if (key === 'event') {
          page.redraw();
        }
      },
      ...more,
    });
  return [
    el('div', {class: 'grid2'}, fields(of, draft())),
    el('div', {class: 'row'}, button('Write it', write, {'data-at': `write ${name}`, 'aria-label': `Write it: ${name}`})),
  ];

  async function write() {
    const edits = rowsOf(draft());
    if (edits && (await page.edit(edits.map((keys) => ({do: 'log', keys}))))) {
      filled.delete(name);
      page.redraw();
    }
  }
}

/** The rows that say it: one, but where trays that other trays stand between must be named. */
function rows(page, group, draft) {
  const count = Number(draft.trays);
  if (!Number.isInteger(count) || count < 1 || count > group.trays.length) {
    page.say(`${group.sowing}: trays must be a whole number from 1 to ${group.trays.length}.`, true);
    return null;
  }
  const next = group.next.find((n) => n.event === draft.event) ?? group.next[0];
  const row = (more) => given({sowing: group.sowing, event: next.event, date: draft.date, plants: draft.plants, place: next.places.includes(draft.place) ? draft.place : '', ...more});
  return next.isAlone && page.state.soFar.columns.includes('trays')
    ? [row({trays: String(count)})]
    : ranges(group.trays.slice(0, count)).map((tray) => row({tray}));
}

function given(keys) {
  return Object.fromEntries(Object.entries(keys).filter(([, text]) => text !== ''));
}

/** Names, with numbers that follow on one another in one: 5, 6 and 7 are 5-7. */
function ranges(names) {
  const runs = [];
  for (const name of names) {
    const last = runs.at(-1);
    const isNext = last && /^[1-9]\d{0,5}$/.test(name) && Number(name) === Number(last.at(-1)) + 1;
    if (isNext) {
      last.push(name);
    } else {
      runs.push([name]);
    }
  }
  return runs.map((run) => (run.length === 1 ? run[0] : `${run[0]}-${run.at(-1)}`));
}

/** For whatever the groups do not have: a tray by its name, one sown again. */
function other(page) {
  const sowings = page.state.sowings.map((s) => [s.name, s.name]);
  const places = page.state.places.map((p) => p.name);
  const has = (column) => page.state.soFar.columns.includes(column);
  return el(
    'details',
    {class: 'small', 'data-open': 'another row'},
    el('summary', {}, 'Another row, as for a tray that is sown again'),
    form(page, 'another row', {sowing: sowings[0]?.[0] ?? '', event: 'sown', tray: '', trays: ''}, (of, draft) => [
      of('sowing', 'Sowing', {choices: sowings}),
      of('event', 'What came', {choices: page.state.soFar.events.map((e) => [e, EVENTS[e] ?? e])}),
      of('tray', 'Tray', {hint: 'its name, or 5-16'}),
      has('trays') ? of('trays', 'Or how many', {hint: 'all'}) : null,
      ...common(page, of, draft.event, places),
    ], (draft) => [given(draft)]),
  );
}

/** The log's last rows, and what is wrong with them; those with a fault are always there. */
function written(page) {
  const all = page.state.log.map((row, at) => ({...row, at})).reverse();
  const isWrong = (row) => page.state.faults.some((f) => f.list === 'log' && f.row === row.at);
  const shown = all.filter((row, i) => isAllShown || i < MOST_SHOWN || isWrong(row));
  return [
    el('h3', {}, 'Written down, newest first'),
    all.length ? null : el('p', {class: 'hint'}, `Nothing yet in ${page.state.soFar.file}.`),
    el('ol', {id: 'log', class: 'log', role: 'list'}, shown.map((row) => rowOf(page, row))),
    shown.length < all.length
      ? el('div', {class: 'row'}, button(`Show all ${all.length}`, () => { isAllShown = true; page.redraw(); }, {'data-at': 'all rows'}))
      : null,
  ];
}

function rowOf(page, {at, cells}) {
  const told = words(cells);
  const faults = page.state.faults.filter((f) => f.list === 'log' && f.row === at);
  return el(
    'li',
    {'data-row': at},
    el('span', {}, told, faults.map((f) => el('span', {class: 'fault'}, f.words))),
    button('Take back', () => page.edit([{do: 'take-back', row: at}]), {class: 'plain', 'data-at': `take back ${at}`, 'aria-label': `Take back: ${told}`}),
  );
}

function words(cells) {
  const which = cells.tray ? `tray${/\d *(-|–|to) *\d/.test(cells.tray) ? 's' : ''} ${cells.tray}` : cells.trays ? trays(Number(cells.trays)) : 'all trays';
  return [
    `${cells.date}, ${cells.sowing}: ${which} ${EVENTS[cells.event] ?? cells.event}`,
    cells.plants ? `${cells.plants} plants in each` : '',
    cells.place ? `to ${cells.place}` : '',
  ].filter(Boolean).join(', ');
}
