// The plan along a time axis: each sowing from its day to its bed, with a handle to move it.
import {el} from '/fields.js';
import {chance, outcome, shows} from '/outcome.js';

const DAY = 86400000;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

const number = (date) => (/^\d{4}-\d{2}-\d{2}$/.test(date ?? '') ? Date.parse(`${date}T00:00:00Z`) / DAY : NaN);

const yearOf = (day) => new Date(day * DAY).getUTCFullYear();

// A day of another year than the one in which the season ends has its year beside it.
function words(day, end) {
  const date = new Date(day * DAY);
  const year = yearOf(day) === yearOf(end) ? '' : ` ${yearOf(day)}`;
  return `${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]}${year}`;
}

export function timeline(page, rows) {
  const start = number(page.state.head.cells['season.start']);
  const end = number(page.state.head.cells['season.end']);
  if (!(end > start)) {
    return el('p', {class: 'hint'}, 'The season needs a start and an end first.');
  }
  const share = (day) => `${(100 * (Math.min(Math.max(day, start), end) - start)) / (end - start)}%`;
  return el(
    'div',
    {class: 'axis'},
    legend(page, rows),
    el('div', {class: 'line months', 'aria-hidden': 'true'}, el('span'), months(start, end, share), el('span', {}, 'Chance')),
    rows.map(({sowing, row}) => line(page, sowing, row, {start, end, share, today: today(page)})),
  );
}

/** The day of the season that it is; not a number before the season. */
const today = (page) => (page.state.soFar.line && !page.state.soFar.isWinter ? number(page.state.soFar.today) : NaN);

function swatch(name, words, colour) {
  const box = el('span', {class: `swatch ${name}`});
  box.style.backgroundColor = colour;
  return el('span', {}, box, words);
}

/** What the colours mean: the stages in the order of a tray's life, once there is a forecast. */
function legend(page, rows) {
  const place = el('p', {class: 'key came'});
  place.repaint = () => {
    const bars = rows.flatMap(({sowing}) => outcome.of(page, sowing.name)?.bars ?? []).filter((bar) => !bar.isUnsown);
    const stages = [...new Map(bars.map((bar) => [bar.order, bar])).values()].sort((a, b) => a.order - b.order);
    place.replaceChildren(
      ...stages.map(({stage, colour}) => swatch('', stage, colour)),
      swatch('waits', 'waiting for room', '#fff'),
      swatch('tail', 'likely ready (8 springs of 10)', ''),
      swatch('bed', 'the bed wants it', ''),
      ...(Number.isNaN(today(page)) ? [] : [swatch('today', 'today', '')]),
    );
  };
  place.repaint();
  return place;
}

function months(start, end, share) {
  const track = el('div', {class: 'track'});
  const first = new Date(start * DAY);
  for (let m = 0; m < 14; m++) {
    const day = Date.UTC(first.getUTCFullYear(), first.getUTCMonth() + m, 1) / DAY;
    if (day >= start && day < end - 7) {
      const month = new Date(day * DAY).getUTCMonth();
      const isNamed = yearOf(start) !== yearOf(end) && (month === 0 || !track.hasChildNodes());
      const mark = el('span', {}, isNamed ? `${MONTHS[month]} ${yearOf(day)}` : MONTHS[month]);
      mark.style.left = share(day);
      track.append(mark);
    }
  }
  return track;
}

function between(name, from, to, share) {
  const bar = el('div', {class: name, 'aria-hidden': 'true'});
  bar.style.left = share(from);
  bar.style.width = `calc(${share(to)} - ${share(from)})`;
  return bar;
}

function line(page, sowing, row, axis) {
  const sow = number(sowing.cells.sow);
  const from = number(sowing.cells['bed-from']);
  const by = number(sowing.cells['bed-by']);
  const track = el('div', {class: 'track'});
  // What comes of it moves along with its day until there is a forecast of the new one.
  const layer = el('div', {class: 'layer'});
  if (!Number.isNaN(sow)) {
    track.append(el('div', {class: 'clip', 'aria-hidden': 'true'}, shows(page, sowing.name, layer, (of) => stays(of, sow, by, axis))));
  }
  if (by >= from) {
    // The last day counts to its end.
    track.append(between('bed', from, by + 1, axis.share));
  }
  if (!Number.isNaN(sow)) {
    track.append(thumb(page, sowing, row, sow, track, layer, axis));
  }
  if (axis.today >= axis.start) {
    track.append(between('today', axis.today, axis.today, axis.share));
  }
  const day = el('small', {class: 'day'}, Number.isNaN(sow) ? 'no date' : words(sow, axis.end));
  return el(
    'div',
    {class: 'line', 'data-row': row},
    el('div', {class: 'name'}, el('span', {class: 'kept'}, sowing.name), ' ', day),
    track,
    shows(page, sowing.name, el('div', {class: 'chance'}), (of) => {
      return [el('span', {title: of ? `Likely ready: ${of.ready}` : null}, chance(of))];
    }),
  );
}

/** The stages one after the other, waiting hatched, and a lighter tail for the days on which it is likely ready. */
function stays(of, sow, by, {start, end}) {
  const bar = (name, from, to, title) => {
    const box = el('div', {class: name, title});
    box.style.left = `${(100 * (sow + from - start)) / (end - start)}%`;
    box.style.width = `${(100 * (to - from)) / (end - start)}%`;
    return box;
  };
  if (!of) {
    return by > sow ? [bar('unknown', 0, by - sow)] : [];
  }
  const pieces = of.bars.map(({stage, colour, isUnsown, from, to}) => {
    const box = bar(isUnsown ? 'stage waits' : 'stage', from, to, `${stage}, ${Math.round(to - from)} days`);
    box.style.backgroundColor = colour;
    return box;
  });
  const waits = of.bars
    .filter((stay) => stay.waits >= 0.5)
    .map(({to, waits}) => bar('waits over', to - waits, to, `waiting for room, ${Math.round(waits)} days`));
  return [...tail(of, bar, end - sow), ...pieces, ...waits];
}

/** From its first likely day to the last, in the lightness of doubt; it fades where too few springs have a last. */
function tail(of, bar, last) {
  if (of.readyFrom === undefined) {
    return [];
  }
  const box = bar(of.readyBy === undefined ? 'tail open' : 'tail', of.readyFrom, (of.readyBy ?? last) + 1, `likely ready: ${of.ready}`);
  return [box];
}

function thumb(page, sowing, row, sow, track, layer, {start, end, share}) {
  let now = sow;
  // What the plan will say once all that was sent is answered.
  let sent = sow;
  let timer = 0;
  const handle = el('button', {
    type: 'button',
    class: 'thumb',
    role: 'slider',
    'data-at': `axis ${row}`,
    'aria-label': `Day to sow ${sowing.name}`,
    'aria-valuemin': start,
    'aria-valuemax': end,
  });
  const move = (to) => {
    now = Math.min(Math.max(Math.round(to), start), end);
    handle.style.left = share(now);
    layer.style.left = `${(100 * (now - sow)) / (end - start)}%`;
    layer.classList.toggle('moved', now !== sow);
    handle.setAttribute('aria-valuenow', now);
    handle.setAttribute('aria-valuetext', words(now, end));
    const shown = track.parentElement?.querySelector('.day');
    if (shown) {
      shown.textContent = words(now, end);
    }
  };
  const commit = () => {
    clearTimeout(timer);
    if (now !== sent) {
      const days = String(now - sent);
      // A redraw takes the handle away, which leaves it: what was sent is not sent again.
      sent = now;
      page.edit([{do: 'shift', row, days}]);
      return true;
    }
    return false;
  };
  move(sow);
  handle.addEventListener('keydown', (event) => {
    const days = {ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: -7, PageUp: 7}[event.key];
    if (days) {
      event.preventDefault();
      move(now + days);
      clearTimeout(timer);
      timer = setTimeout(commit, 500);
    } else if (event.key === 'Escape') {
      move(sent);
    }
  });
  handle.addEventListener('blur', commit);
  handle.addEventListener('pointerdown', (event) => {
    handle.setPointerCapture(event.pointerId);
    page.hold(true);
    const box = track.getBoundingClientRect();
    const grip = event.clientX - (box.left + (box.width * (now - start)) / (end - start));
    const drag = (e) => move(start + ((e.clientX - grip - box.left) / box.width) * (end - start));
    const over = (e) => {
      handle.removeEventListener('pointermove', drag);
      handle.removeEventListener('pointerup', over);
      handle.removeEventListener('pointercancel', over);
      if (e.type === 'pointercancel') {
        move(sent);
      }
      page.hold(false);
      if (!commit()) {
        page.redraw();
      }
    };
    handle.addEventListener('pointermove', drag);
    handle.addEventListener('pointerup', over);
    handle.addEventListener('pointercancel', over);
  });
  return handle;
}
