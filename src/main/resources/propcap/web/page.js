// The page as a whole: what is open, what is unsaved, which part is shown.
import {get, listen, post, Refused} from '/server.js';
import {ask, button, el, fill} from '/fields.js';
import {places} from '/places.js';
import {sowings} from '/sowings.js';
import {crops} from '/crops.js';
import {isOfMoney, money} from '/money.js';
import {weather} from '/weather.js';
import {sofar} from '/sofar.js';
import {questions} from '/questions.js';
import {outlook} from '/outlook.js';
import {discard, save, saveAs} from '/saving.js';

/** More faults than these at once are shown when asked for. */
const MOST_LOOSE = 5;

const $ = (id) => document.getElementById(id);

const TABS = [
  ['places', 'Places', places],
  ['sowings', 'Sowings', sowings],
  ['crops', 'Crops', crops],
  ['money', 'Money and hands', money],
  ['', 'Season and weather', weather],
  ['log', 'Season so far', sofar],
  ['questions', 'Questions', questions],
];

let state = null;
let shown = '';
let tab = 'places';
let forecastVersion = '';
let isAllLoose = false;
let queue = Promise.resolve();
let held = false;

/** What the parts of the page may use. */
const page = {
  get state() {
    return state;
  },
  /** Faults of a field. */
  faults(list, row, key) {
    return state.faults.filter((f) => f.list === list && f.row === row && f.key === key);
  },
  edit(edits) {
    return run(() => post('/api/edit', {file: shown, version: state.version, edits}));
  },
  run,
  say,
  title,
  toMend,
  redraw: () => draw(),
  /** While something is dragged it is not drawn anew under the hand. */
  hold(isHeld) {
    held = isHeld;
  },
  /** When all that was done is answered. */
  get settled() {
    return queue;
  },
  /** Which scenario is looked at next. */
  turnTo(file) {
    shown = file;
  },
};

/** So many things are to mend, in words. */
function toMend(count) {
  return count === 1 ? 'One thing is still to mend' : `${count} things are still to mend`;
}

/** Does one thing after another, looks at what came of it, and shows what was refused. */
function run(action, refused = (words) => say(words, true)) {
  const done = queue.then(async () => {
    try {
      const result = await action();
      await look();
      return result;
    } catch (refusal) {
      if (!(refusal instanceof Refused)) {
        say('The server does not answer. What was changed before is kept and comes back.', true);
        return null;
      }
      refused(refusal.message);
      await look();
      return null;
    }
  });
  queue = done;
  return done;
}

/** A notice that stays until it is read. */
function say(words, isWrong = false, ...buttons) {
  const notice = el(
    'div',
    {class: isWrong ? 'notice wrong' : 'notice', role: isWrong ? 'alert' : null},
    el('span', {}, words),
    ...buttons,
    button('Close', () => notice.remove(), {class: 'plain'}),
  );
  for (const other of [...$('notices').children]) {
    if (other.firstChild.textContent === words) {
      other.remove();
    }
  }
  $('notices').append(notice);
  if (!isWrong && !buttons.length) {
    setTimeout(() => notice.remove(), 12000);
  }
  return notice;
}

async function look() {
  try {
    state = await get('/api/state', {file: shown});
  } catch (refusal) {
    if (refusal.status !== 404) {
      throw refusal;
    }
    shown = '';
    state = await get('/api/state', {file: ''});
  }
  shown = state.shown;
  draw();
  const wanted = `${shown} ${state.version}`;
  if (wanted !== forecastVersion) {
    forecastVersion = wanted;
    outlook.begin(state);
    if (!state.faults.length) {
      await post('/api/outlook', {file: shown}).catch((refusal) => say(refusal.message, true));
    }
  }
}

function title(file) {
  return file === state.base ? 'As planned' : state.titles[state.scenarios.indexOf(file)] || file;
}

function draw() {
  if (held) {
    return;
  }
  const name = state.head.cells.name || shown;
  document.title = `${state.changed.length ? '• ' : ''}${name}`;
  $('title').textContent = name;
  const season = `${state.head.cells['season.start'] ?? '?'} to ${state.head.cells['season.end'] ?? '?'}`;
  $('about').textContent = `${shown}, ${season}`;
  $('so-far').textContent = state.soFar.line;
  $('unsaved').textContent = state.changed.length
    ? `Unsaved: ${state.changed.join(', ')}`
    : `All is saved${state.mends ? `; ${toMend(state.mends).toLowerCase()}` : ''}`;
  $('undo').disabled = !state.canUndo;
  $('redo').disabled = !state.canRedo;
  $('save').disabled = !state.changed.length;
  $('discard').hidden = !state.changed.length;
  drawConflicts();
  drawBeside();
  drawTabs();
}

function drawConflicts() {
  const old = $('conflict');
  const words = `Changed on disk since you began: ${state.conflicts.join(', ')}.`;
  if (!state.conflicts.length) {
    old?.remove();
  } else if (!old || !old.textContent.startsWith(words)) {
    old?.remove();
    const notice = say(
      `${words} Nothing is overwritten until you say so; the other version is then kept beside it as .bak.`,
      true,
      button('Keep mine', () => save(page, true)),
      button('Take the one on disk', () => run(() => post('/api/take-disk'))),
    );
    notice.id = 'conflict';
  }
}

function drawBeside() {
  const open = state.scenarios.map((file) => {
    const press = button(title(file), () => show(file), {
      'aria-pressed': String(file === shown),
      'data-at': `show ${file}`,
      'data-file': file,
    });
    return file === state.base
      ? press
      : el(
          'span',
          {class: 'pair'},
          press,
          button('×', () => run(() => post('/api/close-beside', {name: file})), {
            'aria-label': `Close ${title(file)}`,
            'data-at': `close ${file}`,
          }),
        );
  });
  fill($('beside'), open, button('+ What if…', addWhatIf, {id: 'what-if', 'data-at': 'what-if'}));
}

function show(file) {
  shown = file;
  run(async () => {});
}

async function addWhatIf() {
  const others = state.files.filter((f) => !state.scenarios.includes(f));
  let n = 1;
  while (state.titles.includes(`What if ${n}`) || others.includes(`what-if-${n}.yaml`)) {
    n++;
  }
  const asked = await ask(
    'What if…',
    'A what-if starts as a copy of the plan as it stands. Change it, and see beside the plan what differs, on the same springs.',
    [
      {key: 'title', label: 'Its name', value: `What if ${n}`, isWide: true},
      ...(others.length
        ? [
            {
              key: 'name',
              label: 'Or one that lies in the folder',
              choices: [['', 'a new one'], ...others.map((f) => [f, f])],
              isWide: true,
            },
          ]
        : []),
    ],
    'Put it beside',
  );
  if (asked) {
    await run(async () => {
      const done = asked.name
        ? await post('/api/open-beside', {name: asked.name})
        : await post('/api/what-if', {title: asked.title});
      shown = done.file;
    });
  }
}

function drawTabs() {
  const count = (list) =>
    list === 'money'
      ? state.faults.filter(isOfMoney).length
      : state.faults.filter((f) => f.list === list && !isOfMoney(f) && (list !== '' || f.key !== '')).length;
  fill(
    $('tabs'),
    TABS.map(([id, words]) => {
      const wrong = id === 'questions' ? 0 : count(id);
      return button(words, () => choose(id), {
        role: 'tab',
        'aria-selected': String(id === tab),
        'aria-controls': 'panel',
        tabindex: id === tab ? '0' : '-1',
        'data-at': `tab ${id}`,
        'data-tab': id,
        onkeydown: (event) => step(event, id),
      });
    }).map((tabButton, i) => {
      const wrong = TABS[i][0] === 'questions' ? 0 : count(TABS[i][0]);
      if (wrong) {
        tabButton.append(el('span', {class: 'count'}, ` ${wrong} to mend`));
      }
      return tabButton;
    }),
  );
  const chosen = TABS.find(([id]) => id === tab);
  $('panel').setAttribute('aria-label', chosen[1]);
  fill($('panel'), loose(tab), doubts(), chosen[2](page));
}

/** Faults of no field that is shown: of a file as a whole, or of a row. */
function loose(list) {
  const faults = state.faults.filter((f) => f.list === '' && f.key === '' || (f.list === list && f.row < 0 && list !== ''));
  const shown = isAllLoose ? faults : faults.slice(0, MOST_LOOSE);
  return faults.length
    ? el(
        'div',
        {},
        el('ul', {class: 'faults'}, shown.map((f) => el('li', {class: 'fault'}, `${f.where}: ${f.words}`))),
        shown.length < faults.length
          ? button(`Show all ${faults.length}`, () => { isAllLoose = true; draw(); }, {'data-at': 'all faults'})
          : null,
      )
    : null;
}

/** What is unlikely and stops nothing. */
function doubts() {
  return state.warnings.length
    ? el('details', {class: 'doubts', 'data-open': 'doubts', open: state.warnings.length < 4},
        el('summary', {}, state.warnings.length === 1 ? 'One thing is worth another look' : `${state.warnings.length} things are worth another look`),
        el('ul', {}, state.warnings.map((w) => el('li', {}, `${w.where}: ${w.words}`))))
    : null;
}

function choose(id) {
  tab = id;
  drawTabs();
}

function step(event, id) {
  const at = TABS.findIndex(([each]) => each === id);
  const to = {ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: TABS.length - 1}[event.key];
  if (to !== undefined) {
    event.preventDefault();
    choose(TABS[(to + TABS.length) % TABS.length][0]);
    $('tabs').querySelector('[aria-selected="true"]').focus();
  }
}

$('undo').onclick = () => run(() => post('/api/undo'));
$('redo').onclick = () => run(() => post('/api/redo'));
$('discard').onclick = () => discard(page);
$('save').onclick = () => save(page);
$('save-as').onclick = () => saveAs(page);
document.addEventListener('keydown', (event) => {
  if ((event.ctrlKey || event.metaKey) && event.key === 's') {
    event.preventDefault();
    document.activeElement.blur?.();
    if (state.changed.length || document.activeElement) {
      save(page);
    }
  }
});

let isThere = true;
listen(
  (what, news) => {
    if (what === 'state' && state && news.version !== state.version) {
      // A change made here is looked at once it is answered, which may be by then.
      queue = queue.then(() => (news.version > state.version ? look() : null)).catch(() => null);
    } else if (what === 'forecast') {
      outlook.news(news);
    } else if (what === 'study') {
      outlook.study(news);
      questions.study(news, page);
    }
  },
  (there) => {
    if (there && !isThere) {
      forecastVersion = '';
      run(async () => {});
    } else if (!there && isThere) {
      say('Propcap has stopped on this machine. Start it again; what was changed comes back.', true);
    }
    isThere = there;
  },
);

run(async () => {}).then(() => {
  if (state?.isRestored && state.changed.length) {
    say('What you had not saved is back.', false, button('Discard it', () => discard(page)));
  }
});
outlook.start(page);
