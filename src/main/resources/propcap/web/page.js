// The page as a whole: what is open, what is unsaved, which part is shown.
import {get, Gone, listen, post, Refused} from '/server.js';
import {button, el, inWords} from '/fields.js';
import {questions} from '/questions.js';
import {outlook} from '/outlook.js';
import {drawBeside} from '/beside.js';
import {drawTabs} from '/tabs.js';
import {discard, save, saveAs} from '/saving.js';

const GONE = 'Propcap is not running any more; what you change now is not kept';

/** After so long it is looked again whether a program that was gone runs again. */
const LOOK_MS = 2000;

const $ = (id) => document.getElementById(id);

let state = null;
let shown = '';
let forecastVersion = '';
let queue = Promise.resolve();
let held = false;
let isThere = true;

/** What the parts of the page may use. */
const page = {
  get state() {
    return state;
  },
  /** Faults of a field. */
  faults(list, row, key) {
    return state.faults.filter((f) => f.list === list && f.row === row && f.key === key);
  },
  /** Changes the plan; edits that hang on what stands there are made once all before them is answered. */
  edit(edits, refused = (words) => say(words, true)) {
    let made = edits;
    return run(
      () => {
        made = typeof edits === 'function' ? edits() : edits;
        return post('/api/edit', {file: shown, version: state.version, edits: made});
      },
      (words, refusal) =>
        refusal.readings.length
          ? askWhich(refusal, (reading) => page.edit(JSON.parse(JSON.stringify(made), (key, value) => (value === refusal.typed ? reading : value)), refused))
          : refused(words, refusal),
    );
  },
  run,
  askWhich,
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
      if (refusal instanceof Gone) {
        be(false);
        return null;
      }
      if (!(refusal instanceof Refused)) {
        throw refusal;
      }
      refused(refusal.message, refusal);
      await look();
      return null;
    }
  });
  queue = done.catch(() => null);
  return done;
}

/** What was typed may be one thing or another: it is asked which, and what is answered is taken. */
function askWhich({message, readings}, take) {
  const notice = say(message, true, ...readings.map((reading) => button(inWords(reading), () => {
    notice.remove();
    take(reading);
  }, {'data-reading': reading})));
  notice.querySelector('button').focus();
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
      await post('/api/outlook', {file: shown}).catch((refusal) => {
        if (!(refusal instanceof Refused)) {
          throw refusal;
        }
        say(refusal.message, true);
      });
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
  const unsaved = state.changed.length ? `Unsaved: ${state.changed.join(', ')}` : 'All is saved';
  $('unsaved').textContent = !isThere
    ? GONE
    : state.changed.length || !state.mends
      ? unsaved
      : `${unsaved}; ${toMend(state.mends).toLowerCase()}`;
  $('undo').disabled = !isThere || !state.canUndo;
  $('redo').disabled = !isThere || !state.canRedo;
  $('save').disabled = !isThere || !state.changed.length;
  $('save-as').disabled = $('discard').disabled = !isThere;
  $('discard').hidden = !state.changed.length;
  drawConflicts();
  drawBeside(page);
  drawTabs(page);
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

$('undo').onclick = () => run(() => post('/api/undo'));
$('redo').onclick = () => run(() => post('/api/redo'));
$('discard').onclick = () => discard(page);
$('save').onclick = () => save(page);
$('save-as').onclick = () => saveAs(page);
document.addEventListener('keydown', (event) => {
  if ((event.ctrlKey || event.metaKey) && event.key === 's') {
    event.preventDefault();
    document.activeElement.blur?.();
    if (isThere) {
      save(page);
    }
  }
  const step = stepOf(event);
  if (step) {
    event.preventDefault();
    if (!$(step).disabled) {
      run(() => post(`/api/${step}`));
    }
  }
});

/** A step back or forth by the keys for it; within a field they are the field's own. */
function stepOf(event) {
  const isField = event.target.matches?.('input:not([type="checkbox"]), textarea, [contenteditable]');
  if (!(event.ctrlKey || event.metaKey) || event.altKey || isField || $('dialog').open) {
    return null;
  }
  const key = event.key.toLowerCase();
  return key === 'z' ? (event.shiftKey ? 'redo' : 'undo') : key === 'y' ? 'redo' : null;
}

/** Whether the program runs. While it does not, nothing can be changed, for it would be lost. */
function be(there) {
  if (there === isThere) {
    return;
  }
  isThere = there;
  const typed = document.activeElement;
  const isLost = !there && 'was' in (typed?.dataset ?? {}) && typed.value !== typed.dataset.was;
  if (isLost) {
    typed.dataset.was = typed.value;
    typed.blur();
  }
  $('work').inert = $('beside').inert = $('dialog').inert = !there;
  document.body.classList.toggle('gone', !there);
  $('gone')?.remove();
  if (!there) {
    held = false;
    const notice = say(`${GONE}.${isLost ? ` “${typed.value}” was not taken.` : ''} Start Propcap again: what was changed before comes back.`, true);
    notice.id = 'gone';
    seek();
  }
  if (state) {
    draw();
  }
  if (there) {
    forecastVersion = '';
    run(async () => {}).then(() => isThere && say('Propcap runs again.'));
  }
}

/** Looks for the program until it answers: a request that failed may have been the only one. */
async function seek() {
  while (!isThere) {
    await new Promise((over) => setTimeout(over, LOOK_MS));
    await get('/api/studies').then(() => be(true)).catch(() => null);
  }
}

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
    be(there);
  },
);

run(async () => {}).then(() => {
  if (state?.isRestored && state.changed.length) {
    say('What you had not saved is back.', false, button('Discard it', () => discard(page)));
  }
});
outlook.start(page);
