// What can be changed and asked, each behind its tab; what is wrong in it is counted there.
import {button, el, fill} from '/fields.js';
import {places} from '/places.js';
import {sowings} from '/sowings.js';
import {crops} from '/crops.js';
import {isOfMoney, money} from '/money.js';
import {weather} from '/weather.js';
import {sofar} from '/sofar.js';
import {questions} from '/questions.js';

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

let tab = null;
let isAllLoose = false;

/** The tabs, and in the panel the one that is chosen. */
export function drawTabs(page) {
  const {state} = page;
  // Once a log is kept, each morning begins with it.
  tab ??= state.soFar.file && !state.soFar.isWinter ? 'log' : 'places';
  const count = (list) =>
    list === 'money'
      ? state.faults.filter(isOfMoney).length
      : state.faults.filter((f) => f.list === list && !isOfMoney(f) && (list !== '' || f.key !== '')).length;
  fill(
    $('tabs'),
    TABS.map(([id, words]) => {
      const wrong = id === 'questions' ? 0 : count(id);
      const tabButton = button(words, () => choose(page, id), {
        role: 'tab',
        'aria-selected': String(id === tab),
        'aria-controls': 'panel',
        tabindex: id === tab ? '0' : '-1',
        'data-at': `tab ${id}`,
        'data-tab': id,
        onkeydown: (event) => step(page, event, id),
      });
      if (wrong) {
        tabButton.append(el('span', {class: 'count'}, ` ${wrong} to mend`));
      }
      return tabButton;
    }),
  );
  const chosen = TABS.find(([id]) => id === tab);
  $('panel').setAttribute('aria-label', chosen[1]);
  fill($('panel'), loose(page, tab), doubts(page), chosen[2](page));
}

/** Faults of no field that is shown: of a file as a whole, or of a row. */
function loose(page, list) {
  const {state} = page;
  const faults = state.faults.filter((f) => f.list === '' && f.key === '' || (f.list === list && f.row < 0 && list !== ''));
  const shown = isAllLoose ? faults : faults.slice(0, MOST_LOOSE);
  return faults.length
    ? el(
        'div',
        {},
        el('ul', {class: 'faults'}, shown.map((f) => el('li', {class: 'fault'}, `${f.where}: ${f.words}`))),
        shown.length < faults.length
          ? button(`Show all ${faults.length}`, () => { isAllLoose = true; page.redraw(); }, {'data-at': 'all faults'})
          : null,
      )
    : null;
}

/** What is unlikely and stops nothing. */
function doubts({state}) {
  return state.warnings.length
    ? el('details', {class: 'doubts', 'data-open': 'doubts', open: state.warnings.length < 4},
        el('summary', {}, state.warnings.length === 1 ? 'One thing is worth another look' : `${state.warnings.length} things are worth another look`),
        el('ul', {}, state.warnings.map((w) => el('li', {}, `${w.where}: ${w.words}`))))
    : null;
}

function choose(page, id) {
  tab = id;
  drawTabs(page);
}

function step(page, event, id) {
  const at = TABS.findIndex(([each]) => each === id);
  const to = {ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: TABS.length - 1}[event.key];
  if (to !== undefined) {
    event.preventDefault();
    choose(page, TABS[(to + TABS.length) % TABS.length][0]);
    $('tabs').querySelector('[aria-selected="true"]').focus();
  }
}
