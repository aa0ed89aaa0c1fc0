// What comes of each sowing by the forecast, as its row in the plan shows it.
import {el} from '/fields.js';

/** Each mark is drawn, as in the report: a letter of that shape is not in every machine's type. */
const DOTS = {'●': ['safe', 'safe'], '◐': ['risk', 'at risk'], '○': ['lost', 'lost']};

let forecast = null;

export const outcome = {
  /** The forecast that was made last. */
  take(next) {
    forecast = next;
    document.dispatchEvent(new Event('outcome'));
  },

  /** Of a sowing of the scenario that is shown; undefined where the forecast tells nothing of it. */
  of(page, name) {
    return forecast && forecast.file === page.state.shown ? forecast.sowings.find((s) => s.id === name) : undefined;
  },

  /** The place that is full on the most days; empty where none is, or no forecast is there. */
  fullest(page) {
    return forecast && forecast.file === page.state.shown ? forecast.fullest : '';
  },

  /** Whether it is of the plan before the last change. */
  isOld(page) {
    return forecast?.version !== page.state.version;
  },
};

/** Safe, at risk or lost: told apart by shape, and by word to those who do not see it. */
function dot(mark) {
  const [look, word] = DOTS[mark];
  return el('span', {class: `dot ${look}`, role: 'img', 'aria-label': word, title: word});
}

export const chance = (of) => (of ? [dot(of.mark), of.chance] : []);

/** A line that begins with a mark, with the mark drawn. */
export const marked = (line) => (line[0] in DOTS ? [dot(line[0]), ...kept(line.slice(1).trim())] : kept(line));

/** A line's end does not part a name from its number, as in the report. */
const kept = (line) =>
  line.split(/(?<![\p{L}\p{N}-])(\p{L}[\p{L}\p{N}-]*-\d+(?![\p{L}\p{N}-])[,.;:]?)/u).map((part, i) => (i % 2 ? el('span', {class: 'kept'}, part) : part));

/** A place that shows something of a sowing's outcome, now and with each forecast that comes. */
export function shows(page, name, place, words) {
  place.repaint = () => {
    const of = outcome.of(page, name);
    place.replaceChildren(...words(of));
    place.classList.toggle('old', Boolean(of) && outcome.isOld(page));
  };
  place.classList.add('came');
  place.repaint();
  return place;
}

document.addEventListener('outcome', () => {
  for (const place of document.querySelectorAll('.came')) {
    place.repaint?.();
  }
});
