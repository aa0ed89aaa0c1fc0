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
  'moved-out': 'moved out',
  'planted-out': 'planted out',
  'thrown-out': 'thrown out',
};

const MOST_SHOWN = 30;
const MOST_WRONG = 5;

/** What is filled in beside each group of trays, and not written yet. */
const filled = new Map();

/** What was wrong with it, by the field; it is looked at before it is written. */
const wrong = new Map();

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
  return [
    soFar.readOnly ? el('p', {class: 'pairs', id: 'read-only'}, soFar.readOnly) : null,
    day(page),
    soFar.isWinter ? [] : standing(page),
    soFar.isLogged && !soFar.isWinter ? other(page) : null,
    written(page),
  ].flat(2);
}

/** The log is of the house, so the plan itself names it. */
function begin(page) {
  return page.run(() => post('/api/edit', {file: page.state.base, version: page.state.version, edits: [{do: 'keep-log'}]}));
}

function day(page) {
  const {soFar} = page.state;
  const turn = (more) => {
    const now = {day: soFar.isChosen ? soFar.today : '', clock: soFar.isClock, winter: soFar.isWinter, overfull: soFar.isOverfull};
    return page.run(
      () => post('/api/day', {...now, ...more}),
      (words, refusal) => {
        const {field, why} = refusal;
        if (refusal.readings.length) {
          page.askWhich(refusal, (reading) => turn({...more, day: reading}));
        }
        wrong.set('today', {today: [{words: field === 'day' ? `The day ${why}` : words}]});
        page.redraw();
      },
    ).then((done) => done && wrong.delete('today') && page.redraw());
  };
  const isAfterLast = soFar.isChosen && soFar.today === soFar.afterLast && !soFar.isWinter;
  return el(
    'fieldset',
    {},
    el('legend', {}, 'Today'),
    el(
      'div',
      {class: 'inline'},
      field({at: 'today', label: 'The day', value: soFar.today, hint: 'such as 2027-04-10', size: 10, faults: wrong.get('today')?.today, changed: (value) => turn({day: value, clock: false, winter: false})}),
      el('p', {class: 'hint', id: 'why-today'}, soFar.isWinter ? '' : `${soFar.whyToday} Another is taken once you write it here.`),
    ),
    el('p', {id: 'from-today'}, soFar.line || 'Where the trays stand is known once all is mended.'),
    el('p', {class: 'hint'}, 'Once something is written of this day its round is over, and the forecast goes on from the next morning: so write all that moved.'),
    el(
      'div',
      {class: 'row'},
      button('Before the season', () => turn({winter: true}), {'aria-pressed': String(soFar.isWinter), 'data-at': 'winter'}),
      button('The clock’s day', () => turn({day: '', clock: true, winter: false}), {'aria-pressed': String(soFar.isClock && !soFar.isWinter), 'data-at': 'clock'}),
      soFar.afterLast
        ? button('The morning after the last row', () => turn({day: soFar.afterLast, clock: false, winter: false}), {'aria-pressed': String(isAfterLast), 'data-at': 'after last'})
        : null,
      button('Go on though places are overfull', () => turn({overfull: !soFar.isOverfull}), {'aria-pressed': String(soFar.isOverfull), 'data-at': 'overfull'}),
    ),
  );
}

function standing(page) {
  const {groups} = page.state.soFar;
  return [
    el('h3', {id: 'standing', tabindex: '-1'}, 'What stands, and what is due'),
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
    page.state.soFar.isLogged
      ? form(page, name, {event: group.next[0].event, trays: String(group.trays.length)}, (of, draft) => {
        const next = nextOf(group, draft);
        return [
          of('event', 'What came', {value: next.event, choices: group.next.map((n) => [n.event, EVENTS[n.event]])}),
          of('trays', `Trays, of ${group.trays.length}`, {size: 4}),
          plants(of, next, draft),
          ...common(page, of, next.places),
          help(next, draft),
        ];
      }, (draft) => rows(page, group, draft, name), (draft) => `${draft.event} ${canCount(nextOf(group, draft), draft)}`)
      : null,
  );
}

const nextOf = (group, draft) => group.next.find((n) => n.event === draft.event) ?? group.next[0];

/** Whether the last seedlings are up by now, so that the stand can be counted. */
const canCount = (next, draft) => Boolean(next.plants) && (!next.countedUntil || draft.date <= next.countedUntil);

function plants(of, next, draft) {
  return canCount(next, draft) ? of('plants', next.plants, {hint: 'not counted', size: 8}) : null;
}

function help(next, draft) {
  const days = next.standWindow === 1 ? '1 day' : `${next.standWindow} days`;
  return next.plants && !canCount(next, draft)
    ? el('p', {class: 'hint whole'}, `The stand is counted once the last seedlings are up, ${days} after. What shows today: write it first, as “counted in the heat”.`)
    : null;
}

/** What a row can have besides, in the columns of the log. */
function common(page, of, places) {
  const has = (column) => page.state.soFar.columns.includes(column);
  return [
    has('place') && places.length ? of('place', 'Where to', {choices: [['', 'first with room'], ...places.map((p) => [p, p])]}) : null,
    of('date', 'On', {size: 9}),
  ];
}

/**
 * What the fields hold is kept while the page is redrawn, until it is written.
 * Which fields there are hangs on the layout; else they are left alone, for who types goes on to press a button.
 */
function form(page, name, fresh, fields, rowsOf, layout = () => '') {
  const draft = () => ({date: page.state.soFar.today, plants: '', place: '', ...fresh, ...filled.get(name)});
  const told = wrong.get(name) ?? {};
  const shown = new Set();
  const of = (key, label, more = {}) => {
    shown.add(key);
    return field({
      at: `log ${name} ${key}`,
      label,
      value: draft()[key] ?? '',
      faults: told[key],
      changed: (value) => {
        const before = layout(draft());
        filled.set(name, {...filled.get(name), [key]: value, ...(key === 'event' ? {place: ''} : {})});
        if (layout(draft()) !== before) {
          page.redraw();
        }
      },
      ...more,
    });
  };
  const inputs = fields(of, draft());
  const others = Object.keys(told).filter((key) => !shown.has(key)).flatMap((key) => told[key]);
  return el(
    'form',
    {class: 'inline', onsubmit: (event) => { event.preventDefault(); write(); }},
    inputs,
    el('button', {type: 'submit', 'data-at': `write ${name}`, 'aria-label': `Write it: ${name}`}, 'Write it'),
    el('div', {role: 'alert', class: 'whole'}, wrong.has(name) ? el('p', {class: 'fault'}, 'Not written yet.', others.map((f) => ` ${f.words}.`)) : null),
  );

  async function write() {
    const at = [...document.querySelectorAll('fieldset[data-group]')].findIndex((g) => g.dataset.group === name);
    const edits = rowsOf(draft());
    const done = edits && (await page.run(
      () => post('/api/edit', {file: page.state.shown, version: page.state.version, edits: edits.map((keys) => ({do: 'log', keys}))}),
      (words, refusal) => (refusal.readings.length ? page.askWhich(refusal, (reading) => clear(refusal.typed, reading)) : tell(name, [{key: '', words}])),
    ));
    if (done) {
      tell(name, done.faults);
      if (!done.faults.length) {
        filled.delete(name);
      }
    }
    page.redraw();
    goOn(name, at);
  }

  /** Writes it with what is meant by something typed. */
  function clear(typed, reading) {
    const meant = Object.entries(draft()).filter(([, value]) => value === typed);
    filled.set(name, {...filled.get(name), ...Object.fromEntries(meant.map(([key]) => [key, reading]))});
    write();
  }
}

/** Puts what is wrong beside its fields; nothing is wrong any more where there is nothing to tell. */
function tell(name, faults) {
  wrong.delete(name);
  for (const {key, words} of faults) {
    const told = wrong.get(name) ?? {};
    wrong.set(name, {...told, [key]: [...(told[key] ?? []).filter((f) => f.words !== words), {words}]});
  }
}

/** To what is wrong, or to the trays that now stand where those stood that are written down. */
function goOn(name, at) {
  const group = document.querySelector(`[data-group="${CSS.escape(name)}"]`);
  const place = group ?? [...document.querySelectorAll('fieldset[data-group]')][at] ?? document.getElementById('standing');
  const isHere = document.activeElement?.dataset.at === `write ${name}`;
  if (wrong.has(name)) {
    const first = group?.querySelector('[aria-invalid="true"]');
    first?.focus();
    first?.select?.();
  } else if (!isHere) {
    (place?.querySelector('select, input') ?? place)?.focus();
  }
}

/** The rows that say it: one, but where trays that other trays stand between must be named. */
function rows(page, group, draft, name) {
  const count = Number(draft.trays);
  if (!Number.isInteger(count) || count < 1 || count > group.trays.length) {
    tell(name, [{key: 'trays', words: `a whole number from 1 to ${group.trays.length}`}]);
    return null;
  }
  const next = nextOf(group, draft);
  const row = (more) => given({sowing: group.sowing, event: next.event, date: draft.date, plants: canCount(next, draft) ? draft.plants : '', place: next.places.includes(draft.place) ? draft.place : '', ...more});
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
    {class: 'small', 'data-open': 'another row', 'data-group': 'another row'},
    el('summary', {}, 'Another row, as for a tray that is sown again'),
    form(page, 'another row', {sowing: sowings[0]?.[0] ?? '', event: 'sown', tray: '', trays: ''}, (of) => [
      of('sowing', 'Sowing', {choices: sowings}),
      of('event', 'What came', {choices: page.state.soFar.events.map((e) => [e, EVENTS[e] ?? e])}),
      of('tray', 'Tray', {hint: 'its name, or 5-16'}),
      has('trays') ? of('trays', 'Or how many', {hint: 'all', size: 4}) : null,
      of('plants', 'Plants in each', {hint: 'not counted', size: 8}),
      ...common(page, of, places),
    ], (draft) => [given(draft)]),
  );
}

/** The log's last rows, and what is wrong with them; those with a fault are always there. */
function written(page) {
  const all = page.state.log.map((row, at) => ({...row, at})).reverse();
  const faulty = new Set(page.state.faults.filter((f) => f.list === 'log' && f.row >= 0).map((f) => f.row));
  // What is wrong first is often why those after it are.
  const first = new Set([...faulty].sort((a, b) => a - b).slice(0, MOST_WRONG));
  const shown = all.filter((row, i) => isAllShown || first.has(row.at) || (i < MOST_SHOWN && !faulty.has(row.at)));
  return [
    el('h3', {}, 'Written down, newest first'),
    all.length ? null : el('p', {class: 'hint'}, `Nothing yet in ${page.state.soFar.file}.`),
    faulty.size > MOST_WRONG && !isAllShown
      ? el('p', {class: 'fault', id: 'more-wrong'}, `${faulty.size} rows are to mend; here are the first ${MOST_WRONG} of them.`)
      : null,
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
    page.state.soFar.isLogged
      ? button('Take back', () => page.edit([{do: 'take-back', row: at}]), {class: 'plain', 'data-at': `take back ${at}`, 'aria-label': `Take back: ${told}`})
      : null,
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
