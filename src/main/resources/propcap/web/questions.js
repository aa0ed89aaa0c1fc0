// The questions: asked, waited for, stopped, read and saved.
import {get, post} from '/server.js';
import {button, el, field, report} from '/fields.js';
import {outcome} from '/outcome.js';

/** By the question's name: what is asked and not yet answered, and what came of it last. */
const asked = new Map();
const answers = new Map();
const troubles = new Map();

/** By a field's key: what hangs on the plan where it is served empty, whatever the question. */
const OF_EMPTY = {
  match: (page) => ({value: lastCrop(page)}),
  crop: (page) => ({choices: [['', '–'], ...page.state.crops.map((c) => [c.name, c.name])]}),
};

/** By the question's name: what of its fields hangs on the plan, or on what was given. */
const OF_PLAN = {
  now: () => ({advice: {isWide: true}}),
  size: (page, given) => {
    const open = page.state.places.filter((p) => p.cells.spaces !== '0');
    // The place that is full on the most days; until that is known, a table.
    const table = open.find((p) => p.name === outcome.fullest(page)) ?? open.find((p) => p.cells.kind === 'table') ?? open[0];
    const spaces = Number((open.find((p) => p.name === given.place) ?? table)?.cells.spaces) || 40;
    const by = roundStep(spaces / 10);
    return {
      place: {choices: open.map((p) => [p.name, p.name]), value: table?.name ?? ''},
      from: {value: String(spaces)},
      to: {value: String(spaces + STEPS * by)},
      step: {value: String(by)},
      measure: {isWide: true},
      least: {value: given.measure === 'met' ? '80' : '95'},
    };
  },
};

/** So many sizes above today's are tried at first: as large again, or nearly. */
const STEPS = 10;

/** A step that is easily reckoned with, such as 1, 2, 5, 10, 20. */
function roundStep(size) {
  const ten = 10 ** Math.floor(Math.log10(Math.max(1, size)));
  return [1, 2, 5, 10].map((n) => n * ten).reduce((best, n) => (Math.abs(n - size) < Math.abs(best - size) ? n : best));
}

/** By the question's name: what is to be done before it can be asked; nothing where it can. */
const FIRST = {
  compare: (page) =>
    page.state.scenarios.length > 1 ? '' : 'Put a what-if beside the plan first, with the button “+ What if…”.',
  now: ({state}) =>
    !state.soFar.file
      ? 'Keep a log first, in the tab “Season so far”.'
      : state.soFar.isWinter
        ? 'The log is left aside: choose a day first, in the tab “Season so far”.'
        : '',
};

/** The sowings named as the plan's last one: there is time before them to sow earlier. */
function lastCrop(page) {
  const last = page.state.sowings.at(-1)?.name;
  return last ? `${last.replace(/-?\d+$/, '')}*` : '*';
}

/** By the question's name: the fields that were changed here. */
const values = new Map();

function givenTo(name) {
  if (!values.has(name)) {
    values.set(name, {});
  }
  return values.get(name);
}

let shownPage = null;
let shownFullest = '';

/** A field's default that hangs on the forecast is drawn anew with it: what stands there is asked. */
document.addEventListener('outcome', () => {
  if (shownPage && outcome.fullest(shownPage) !== shownFullest) {
    redraw(shownPage);
  }
});

export function questions(page) {
  shownPage = page;
  shownFullest = outcome.fullest(page);
  const faults = page.state.faults.length;
  const toFind = page.state.toFind;
  return [
    el('p', {id: 'asked-of'}, `Asked of: ${page.title(page.state.shown)}`),
    el('p', {class: 'hint'}, 'Each question is tried on 1,000 springs or more. One runs at a time; the others wait in line.'),
    faults > toFind ? el('p', {class: 'fault'}, `${page.toMend(faults)}: mend what is marked first, then ask.`) : null,
    faults && faults === toFind
      ? el('p', {class: 'fault'}, 'Dates or trays of the sowing plan are empty: the last days to sow and a better plan can be asked for, and find them.')
      : null,
    ...inOrder(page).flatMap((question) => [form(page, question), shownAnswer(page, question)]),
  ];
}

/** Of a season that has begun, what now comes first. */
function inOrder({state}) {
  const rank = ({name}) => (name === 'now' && state.soFar.file ? 0 : 1);
  return [...state.questions].sort((a, b) => rank(a) - rank(b));
}

/** Whether nothing is wrong but what the question finds itself. */
const isSound = ({state}, {findsWhatIsEmpty}) => state.faults.length <= (findsWhatIsEmpty ? state.toFind : 0);

/** The question's fields, each with what was given here or else its default. */
function fieldsOf(page, {name, fields}) {
  const given = givenTo(name);
  const ofPlan = OF_PLAN[name]?.(page, given) ?? {};
  return fields.map((served) => {
    const ofEmpty = served.value === '' ? OF_EMPTY[served.key]?.(page) : null;
    const f = {...served, choices: served.choices.length ? served.choices : null, ...ofEmpty, ...ofPlan[served.key]};
    const kept = given[f.key];
    const isKept = kept !== undefined && (!f.choices || f.choices.some(([k]) => k === kept));
    return {...f, value: isKept ? kept : f.value};
  });
}

function form(page, question) {
  const {name} = question;
  const first = FIRST[name]?.(page) ?? '';
  const fields = fieldsOf(page, question).map((f) =>
    field({
      ...f,
      at: `ask ${name} ${f.key}`,
      changed: (value) => {
        givenTo(name)[f.key] = value;
        if (f.choices) {
          // Other fields' defaults hang on it.
          page.redraw();
        }
      },
    }),
  );
  const waiting = asked.get(name);
  return el(
    'form',
    {
      'data-question': name,
      onsubmit: (event) => {
        event.preventDefault();
        start(page, question);
      },
    },
    el(
      'fieldset',
      {},
      el('legend', {}, question.title),
      el('p', {class: 'hint'}, first ? `${question.words} ${first}` : question.words),
      el('div', {class: 'grid2'}, fields),
      el(
        'div',
        {class: 'row status'},
        el('button', {type: 'submit', disabled: Boolean(first) || Boolean(waiting) || !isSound(page, question), 'data-at': `ask ${name}`}, 'Ask'),
        waiting
          ? [
              el('progress', {max: 1, value: waiting.share, 'aria-label': 'How far the answer is'}),
              el('span', {role: 'status'}, waiting.stage === 'waiting' ? 'waits in line' : percent(waiting.share)),
              button('Stop', () => post('/api/stop', {id: waiting.id}), {'data-at': `stop ${name}`}),
            ]
          : null,
      ),
      troubles.has(name) ? el('p', {class: 'fault', role: 'alert', 'data-trouble': name}, troubles.get(name)) : null,
    ),
  );
}

async function start(page, question) {
  const {name} = question;
  const fields = fieldsOf(page, question);
  const given = Object.fromEntries(fields.map((f) => [f.key, f.value]));
  const of = name === 'compare' ? page.state.scenarios.map(page.title).join(', ') : page.title(page.state.shown);
  troubles.delete(name);
  const done = await page.run(
    () => post('/api/ask', {question: name, file: page.state.shown, ...given}),
    (words, refusal) => {
      troubles.set(name, named(refusal, fields));
      const unclear = fields.find((f) => refusal.readings.length && f.value === refusal.typed);
      if (unclear) {
        page.askWhich(refusal, (reading) => {
          givenTo(name)[unclear.key] = reading;
          start(page, question);
        });
      }
    },
  );
  if (done) {
    asked.set(name, {id: done.id, name, of, share: 0, stage: 'waiting', ...early.get(done.id)});
    finish(page, name);
  }
  page.redraw();
}

/** The server's words, with the field's name as it stands on the page. */
function named({message, field, why}, fields) {
  const meant = fields.find((f) => f.key === field);
  return meant ? `“${meant.label}” ${why}` : sentence(message);
}

const sentence = (words) => words.charAt(0).toUpperCase() + words.slice(1);

/** News of a study may be here before the answer that names it. */
const early = new Map();

questions.study = (study, page) => {
  if (study.name === 'forecast') {
    return;
  }
  early.set(study.id, study);
  const waiting = asked.get(study.name);
  if (waiting?.id === study.id) {
    const isFurther = waiting.stage === 'running' && study.stage === 'running';
    Object.assign(waiting, study);
    if (isFurther) {
      showShare(waiting);
    } else {
      finish(page, study.name);
      redraw(page);
    }
  }
};

/** How far it is, with all else left alone: who presses a button must not lose it meanwhile. */
function showShare({name, share}) {
  const status = document.querySelector(`[data-question="${name}"] .status`);
  if (status?.querySelector('progress')) {
    status.querySelector('progress').value = share;
    status.querySelector('[role="status"]').textContent = percent(share);
  }
}

const percent = (share) => `${Math.round(100 * share)} %`;

function redraw(page) {
  if (document.querySelector('[data-tab="questions"][aria-selected="true"]')) {
    page.redraw();
  }
}

async function finish(page, name) {
  const over = asked.get(name);
  if (!over || over.stage === 'waiting' || over.stage === 'running') {
    return;
  }
  asked.delete(name);
  if (over.stage === 'failed') {
    troubles.set(name, sentence(over.trouble));
  } else if (over.stage === 'stopped') {
    page.say('Stopped. Nothing was written.');
  } else {
    try {
      answers.set(name, {...(await get('/api/answer', {id: over.id})), of: over.of, written: ''});
    } catch (refusal) {
      troubles.set(name, sentence(refusal.message));
    }
  }
  redraw(page);
  // Who types elsewhere is not taken away from there.
  const active = document.activeElement;
  if (active === document.body || active?.closest('form')?.dataset.question === name) {
    document.querySelector(`[data-answer="${name}"]`)?.focus();
  }
}

/** The question's last answer, until it is asked again and answered. */
function shownAnswer(page, {name, title}) {
  const answer = answers.get(name);
  if (!answer) {
    return null;
  }
  const parts = report(el('div'), answer.html);
  return el(
    'div',
    {class: 'reply', 'data-answer': name, tabindex: '-1', role: 'region', 'aria-label': `The answer: ${title}`},
    el(
      'div',
      {class: 'row'},
      button('Save the answer', () => save(page, name), {class: 'main', 'data-at': `save ${name}`}),
      answer.proposal
        ? [
            button(`Put “${answer.proposal}” beside the plan`, () => putBeside(page, name), {'data-at': `beside ${name}`}),
            button('Make it the plan', () => take(page, name), {'data-at': `take ${name}`}),
          ]
        : null,
      el('span', {class: 'written', role: 'status'}, (answer.version ?? page.state.version) === page.state.version ? answer.written : ''),
    ),
    el(
      'p',
      {class: 'hint'},
      'Open: ',
      ...answer.files
        .filter((file) => !file.endsWith('.json'))
        .flatMap((file) => [el('a', {href: `/answer/${answer.id}/${file}`, target: '_blank', rel: 'noopener'}, file), ' ']),
    ),
    el('p', {class: 'hint'}, `Asked of: ${answer.of}. ${answer.basis}`),
    parts,
  );
}

/** What the answer proposes becomes a what-if; the plan stays as it is. */
async function putBeside(page, name) {
  const answer = answers.get(name);
  const done = await page.run(() => post('/api/answer/beside', {id: answer.id}));
  if (done) {
    answer.written = `“${answer.proposal}” stands beside the plan, as ${done.file}. What differs is told with the forecast.`;
    answer.version = page.state.version;
    page.redraw();
  }
}

/** The plan of which was asked becomes what the answer proposes; Undo takes it back in one step. */
async function take(page, name) {
  const answer = answers.get(name);
  const done = await page.run(() => post('/api/answer/take', {id: answer.id}));
  if (done) {
    answer.written = `It is the plan now: ${answer.proposal}. Undo takes it back; Save writes it.`;
    answer.version = page.state.version;
    page.redraw();
  }
}

async function save(page, name) {
  const answer = answers.get(name);
  const done = await page.run(() => post('/api/answer/save', {id: answer.id}));
  if (done) {
    answer.written = `Written: ${done.written.join(', ')}`;
    delete answer.version;
    page.redraw();
  }
}
