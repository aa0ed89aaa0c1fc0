// The forecast beside the plan: at once from a few springs, then from all of them.
import {get, post} from '/server.js';
import {button, el, fill, report} from '/fields.js';
import {marked, outcome} from '/outcome.js';

const $ = (id) => document.getElementById(id);
const count = (n) => Math.round(n).toLocaleString('en-US');

let page = null;
let state = null;
let running = null;
let now = null;
let scale = null;
const open = new Set(['house']);

/** Sections as they were fetched last: they stay until the new ones are here. */
const kept = new Map();

export const outlook = {
  start(thePage) {
    page = thePage;
    new ResizeObserver(() => $('band') && $('band').getAttribute('data-width') !== String(width()) && $('band').replaceWith(band())).observe($('outlook-body'));
    $('outlook-stop').onclick = () => running && post('/api/stop', {id: running.id});
    showRunning();
  },

  /** A change was made: what is shown is of the time before it. */
  begin(next) {
    state = next;
    $('outlook-body').classList.add('stale');
    if (next.faults.length) {
      if (now?.file !== next.shown) {
        forget();
      }
      $('outlook-status').textContent = `${page.toMend(next.faults.length)}${now ? '' : '; no forecast yet'}.`;
    }
    tellOfBefore(next.faults);
  },

  async news(news) {
    if (state && news.version === state.version) {
      await draw();
    }
  },

  study(study) {
    if (study.stage === 'running') {
      running = study;
    } else if (running?.id === study.id) {
      running = null;
    }
    if (study.name === 'forecast' && study.stage === 'failed') {
      page.say(study.trouble, true);
    }
    showRunning();
  },
};

/** While something is to mend, what is shown is of the plan before, which is said where it is read. */
function tellOfBefore(faults) {
  $('outlook-before')?.remove();
  if (!now || !faults.length) {
    return;
  }
  const files = [...new Set(faults.map((f) => f.file))];
  const where = faults.length === 1 ? `the fault in ${faults[0].where}` : `the ${faults.length} faults in ${files.join(' and ')}`;
  $('outlook-body').prepend(el('p', {id: 'outlook-before', class: 'before'}, `Of the plan before ${where}. A forecast of the plan as it stands comes once ${faults.length === 1 ? 'it is' : 'they are'} mended.`));
  $('strip').textContent = `Before ${where}: ${strip()}`;
}

const strip = () => `${now.needed.value} plants needed on time · ${now.safe} sowings safe`;

/** Another scenario's forecast must not be taken for that of one that has none. */
function forget() {
  now = null;
  $('strip').textContent = 'No forecast yet';
  fill($('outlook-body'), el('p', {}, 'No forecast yet: it comes once all is mended.'));
  $('outlook-body').classList.remove('stale');
}

function showRunning() {
  $('outlook-progress').hidden = !running;
  $('outlook-stop').hidden = !running;
  $('outlook-progress').value = running?.share ?? 0;
  if (running && running.name !== 'forecast') {
    $('outlook-status').textContent = `Answering “${running.name}”; the forecast comes after it.`;
  } else if (running && now?.version !== state?.version && !state?.faults.length) {
    $('outlook-status').textContent = 'Trying the first springs …';
  } else if (now && !state?.faults.length) {
    $('outlook-status').textContent = now.isWhole
      ? `From ${count(now.seasons)} springs.`
      : `From ${count(now.seasons)} springs${running ? '; trying more …' : '.'}`;
  }
}

async function draw() {
  const next = await get('/api/forecast').catch(() => null);
  if (!next || next.version !== state.version || next.file !== state.shown) {
    return;
  }
  if (!now || now.version !== next.version || now.file !== next.file) {
    scale = null;
  }
  now = next;
  outcome.take(now);
  $('strip').textContent = strip();
  const pieces = [
    el('p', {class: 'verdict', id: 'verdict'}, marked(now.verdict)),
    state.isExampleWeather
      ? el('p', {class: 'hint', id: 'example-weather'}, 'The springs are those of an invented example’s weather. Take your own place’s in the tab “Season and weather”.')
      : null,
    el('p', {class: 'big', id: 'needed'}, el('strong', {}, now.needed.value), ` ${now.needed.what} `, el('small', {}, `(${now.needed.error})`)),
    el('p', {class: 'all', id: 'on-time', 'data-mean': now.mean, 'data-seasons': now.seasons}, now.onTime),
    band(),
    el('p', {class: 'change', id: 'change'}, el('span', {class: now.change?.weight || null}, now.change?.told ?? '')),
    now.doubts.length ? el('div', {id: 'doubts', role: 'status'}, el('p', {}, 'Worth another look in the log:'), el('ul', {}, now.doubts.map((doubt) => el('li', {}, doubt)))) : null,
    el('ul', {}, now.lines.map((line) => el('li', {}, marked(line.trim())))),
    ...sideBySide(),
    ...now.sections.map(section),
    el('div', {class: 'row'}, button('Save this report', save, {disabled: !now.isWhole, 'data-at': 'save report'}), el('span', {class: 'written', id: 'report-written'})),
  ];
  const written = $('report-written')?.textContent ?? '';
  fill($('outlook-body'), pieces);
  $('report-written').textContent = written;
  $('outlook-body').classList.remove('stale');
  showRunning();
}

/** Drawn as wide as it stands, so that its number is as large as all others. */
const width = () => Math.max(200, $('outlook-body').clientWidth);

/** The 95 % interval as a band, which narrows as more springs are tried. */
function band() {
  const half = (now.high - now.low) / 2;
  const others = now.change ? [now.change.before] : [];
  if (!scale) {
    const most = Math.max(half, ...others.map((m) => Math.abs(m - now.mean)), 1);
    scale = {from: now.mean - 1.6 * most, to: now.mean + 1.6 * most};
  }
  const wide = width();
  const x = (v) => 20 + ((wide - 40) * (v - scale.from)) / (scale.to - scale.from);
  const svg = (name, attributes, text) => {
    const element = document.createElementNS('http://www.w3.org/2000/svg', name);
    Object.entries(attributes).forEach(([k, v]) => element.setAttribute(k, v));
    element.textContent = text ?? '';
    return element;
  };
  const words = `On time: ${count(now.mean)}, 95 % interval ${count(now.low)} to ${count(now.high)}`;
  const picture = svg('svg', {id: 'band', viewBox: `0 0 ${wide} 64`, 'data-width': wide, role: 'img', 'aria-label': words, 'data-half': half});
  picture.append(
    svg('line', {x1: 20, x2: wide - 20, y1: 24, y2: 24, stroke: '#ccc'}),
    svg('rect', {x: x(now.low), y: 14, width: Math.max(2, x(now.high) - x(now.low)), height: 20, fill: '#CFDDE8'}),
    svg('line', {x1: x(now.mean), x2: x(now.mean), y1: 8, y2: 40, stroke: '#0072B2', 'stroke-width': 3}),
    svg('text', {x: x(now.mean), y: 58, 'text-anchor': 'middle', 'font-size': 14, 'font-family': 'Arial, Liberation Sans, sans-serif'}, count(now.mean)),
  );
  others.forEach((m) =>
    picture.append(
      svg('line', {x1: x(m), x2: x(m), y1: 8, y2: 40, stroke: '#555', 'stroke-dasharray': '4 3', 'stroke-width': 2}),
    ),
  );
  return picture;
}

function sideBySide() {
  if (!now.sideBySide) {
    return [];
  }
  const table = report(el('div'), now.sideBySide);
  const details = el(
    'details',
    {'data-open': 'side-by-side', open: open.has('side-by-side')},
    el('summary', {}, 'All that differs'),
  );
  load(details, 'side-by-side');
  const pairs = el(
    'div',
    {class: 'pairs', id: 'pairs'},
    el('h3', {}, 'Side by side, on the same springs'),
    now.verdicts.map((verdict) => el('p', {}, verdict)),
    table,
  );
  return [pairs, details];
}

function section({id, title}) {
  const details = el('details', {'data-open': id, open: open.has(id)}, el('summary', {}, title));
  load(details, id);
  return details;
}

/** Fetches a section where it is open, and when it is opened. */
function load(details, id) {
  const place = report(el('div'), kept.get(id) ?? '');
  details.append(place);
  const fetched = async () => {
    const version = now.version;
    const html = await get('/api/section', {id}).catch(() => '');
    if (now.version === version) {
      kept.set(id, html);
      report(place, html);
    }
  };
  details.addEventListener('toggle', () => {
    // One that is open from the start tells so as well.
    if (!details.open) {
      open.delete(id);
    } else if (!open.has(id)) {
      open.add(id);
      fetched();
    }
  });
  if (open.has(id)) {
    fetched();
  }
}

async function save() {
  const done = await page.run(() => post('/api/forecast/save'));
  if (done) {
    $('report-written').textContent = `Written: ${done.written.join(', ')}`;
  }
}
