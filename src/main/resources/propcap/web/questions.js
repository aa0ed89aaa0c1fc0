// The questions: asked, waited for, stopped, read and saved.
import {get, post} from '/server.js';
import {button, el, field, report} from '/fields.js';

let answer = null;
let asked = null;
let written = '';

/** Each question: its words, and the fields that it takes. */
const QUESTIONS = [
  {
    name: 'compare',
    title: 'Does a change pay?',
    words: 'Compares each what-if with the plan, on the same springs, in plants and in money.',
    fields: () => [],
    isPossible: (page) => page.state.scenarios.length > 1,
    impossible: 'Put a what-if beside the plan first, with the button “+ What if…”.',
  },
  {
    name: 'bottleneck',
    title: 'Which place holds the spring up, and what to buy first?',
    words: 'Tries a tenth more and a tenth less of each place, then buys step by step.',
    fields: () => [{key: 'steps', label: 'Steps, at most', value: '5'}],
  },
  {
    name: 'size',
    title: 'How large must a place be?',
    words: 'Finds the smallest size for which a goal holds.',
    fields: (page) => {
      const open = page.state.places.filter((p) => p.cells.spaces !== '0');
      return [
        {key: 'place', label: 'Place', choices: open.map((p) => [p.name, p.name]), value: open[0]?.name ?? ''},
        {key: 'from', label: 'From, spaces', value: '20'},
        {key: 'to', label: 'To, spaces', value: '200'},
        {key: 'step', label: 'By', value: '20'},
        {
          key: 'measure',
          label: 'Goal',
          isWide: true,
          choices: [
            ['met', 'all these sowings on time, in so many springs'],
            ['on-time', 'this share of the plants needed on time'],
            ['margin', 'the largest margin'],
          ],
          value: 'met',
        },
        {key: 'least', label: 'In at least, %', value: '80'},
        {key: 'match', label: 'Sowings, such as tomato*', value: '*'},
      ];
    },
    values: ({measure, least, ...rest}) => ({
      ...rest,
      goal: measure === 'margin' ? 'margin' : `${measure}>=${least.replace('%', '').trim()}%`,
    }),
  },
  {
    name: 'shift',
    title: 'When is the best day to sow?',
    words: 'Moves a group of sowings earlier and later; several groups parted by commas.',
    fields: () => [
      {key: 'match', label: 'Sowings, such as tomato*', value: '*'},
      {key: 'from', label: 'From, days', value: '-14'},
      {key: 'to', label: 'To, days', value: '14'},
      {key: 'step', label: 'By, days', value: '7'},
    ],
  },
  {
    name: 'plan',
    title: 'Is there a better plan?',
    words: 'Looks for better sowing dates, trays and germination places. Stopped, it answers with the best found until then; saved, the new sowings.csv lies beside the answer.',
    fields: () => [
      {key: 'goal', label: 'Each sowing on time in, % of springs', value: '90'},
      {key: 'earlier', label: 'Earlier by, days at most', value: '14'},
      {key: 'later', label: 'Later by, days at most', value: '14'},
      {key: 'minutes', label: 'Minutes to search', value: '2'},
    ],
  },
];

const values = new Map();

export function questions(page) {
  return [
    el('p', {class: 'hint'}, 'Each question is tried on 1,000 springs or more. One runs at a time; the others wait in line.'),
    ...QUESTIONS.flatMap((question) => [form(page, question), shownAnswer(page, question)]),
  ];
}

function form(page, question) {
  const isPossible = !question.isPossible || question.isPossible(page);
  const given = values.get(question.name) ?? {};
  const fields = question.fields(page).map((f) => {
    const kept = given[f.key] ?? f.value;
    given[f.key] = f.choices && !f.choices.some(([k]) => k === kept) ? f.value : kept;
    return field({
      ...f,
      at: `ask ${question.name} ${f.key}`,
      value: given[f.key],
      changed: (value) => {
        given[f.key] = value;
      },
    });
  });
  values.set(question.name, given);
  const isAsked = asked?.name === question.name;
  return el(
    'form',
    {
      'data-question': question.name,
      onsubmit: (event) => {
        event.preventDefault();
        start(page, question, given);
      },
    },
    el(
      'fieldset',
      {},
      el('legend', {}, question.title),
      el('p', {class: 'hint'}, isPossible ? question.words : `${question.words} ${question.impossible}`),
      el('div', {class: 'grid2'}, fields),
      el(
        'div',
        {class: 'row status'},
        el('button', {type: 'submit', disabled: !isPossible || isAsked || page.state.faults.length > 0, 'data-at': `ask ${question.name}`}, 'Ask'),
        isAsked
          ? [
              el('progress', {max: 1, value: asked.share, 'aria-label': 'How far the answer is'}),
              el('span', {role: 'status'}, asked.stage === 'waiting' ? 'waits in line' : `${Math.round(100 * asked.share)} %`),
              button('Stop', () => post('/api/stop', {id: asked.id}), {'data-at': 'stop question'}),
            ]
          : null,
      ),
    ),
  );
}

async function start(page, question, given) {
  const sent = question.values ? question.values(given) : given;
  const done = await page.run(() => post('/api/ask', {question: question.name, file: page.state.shown, ...sent}));
  if (done) {
    asked = {id: done.id, name: question.name, share: 0, stage: 'waiting', ...early.get(done.id)};
    written = '';
    finish(page);
    page.redraw();
  }
}

/** News of a study may be here before the answer that names it. */
const early = new Map();

questions.study = (study, page) => {
  if (study.name === 'forecast') {
    return;
  }
  early.set(study.id, study);
  if (asked?.id === study.id) {
    Object.assign(asked, study);
    finish(page);
    if (document.querySelector('[data-tab="questions"][aria-selected="true"]')) {
      page.redraw();
    }
  }
};

async function finish(page) {
  if (!asked || asked.stage === 'waiting' || asked.stage === 'running') {
    return;
  }
  const over = asked;
  asked = null;
  if (over.stage === 'failed') {
    page.say(over.trouble, true);
  } else if (over.stage === 'stopped') {
    page.say('Stopped. Nothing was written.');
  } else {
    answer = {...(await get('/api/answer', {id: over.id})), question: over.name};
    written = '';
    page.redraw();
    document.getElementById('answer')?.focus();
  }
}

function shownAnswer(page, question) {
  if (answer?.question !== question.name) {
    return null;
  }
  const parts = report(el('div'), answer.html);
  return el(
    'div',
    {class: 'reply', id: 'answer', tabindex: '-1', role: 'region', 'aria-label': 'The answer'},
    el(
      'div',
      {class: 'row'},
      button('Save the answer', () => save(page), {class: 'main', id: 'save-answer', 'data-at': 'save answer'}),
      el('span', {class: 'written', role: 'status'}, written),
    ),
    el('p', {class: 'hint'}, answer.headlines.at(-1)),
    parts,
  );
}

async function save(page) {
  const done = await page.run(() => post('/api/answer/save', {id: answer.id}));
  if (done) {
    written = `Written: ${done.written.join(', ')}`;
    page.redraw();
  }
}
