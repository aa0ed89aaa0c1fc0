// The crops that the program brings: searched by name, read with their sources, and taken into the farm's own list.
import {get} from '/server.js';
import {button, el} from '/fields.js';

let all = null;

/** Lets one be chosen; its name, or null where it is called off. */
export async function chooseCrop(page, groups) {
  all = all ?? (await page.run(() => get('/api/crops')));
  if (!all) {
    return null;
  }
  const dialog = document.getElementById('dialog');
  return new Promise((resolve) => {
    let taken = null;
    const shown = el('div', {id: 'book-entry', 'aria-live': 'polite'});
    const add = el('button', {type: 'submit', class: 'main', disabled: true}, 'Add it');
    const list = el('select', {id: 'book-list', size: 8, onchange: () => show()});
    const search = el('input', {id: 'book-search', type: 'search', autocomplete: 'off', oninput: () => narrow()});
    const has = (crop) => page.state.crops.some((c) => c.name === crop.name);

    function narrow() {
      const word = plain(search.value);
      const found = all.filter((crop) => [crop.name, ...crop.also].some((name) => plain(name).includes(word)) || crop.kind.startsWith(word));
      list.replaceChildren(
        ...found.map((crop) =>
          el('option', {value: crop.name, disabled: has(crop)}, `${called(crop)}${has(crop) ? ' (in your list)' : ''}`)),
      );
      const first = found.filter((crop) => !has(crop));
      list.value = first.length === 1 || (word && first.length) ? first[0].name : '';
      show(found.length ? '' : 'No crop of this name. Add the nearest one, or “A crop like it…” of your own list.');
    }

    function show(none = '') {
      const crop = all.find((c) => c.name === list.value);
      add.disabled = !crop;
      shown.replaceChildren(...(crop ? entry(crop, groups) : [el('p', {class: 'hint'}, none || `${all.length} crops; choose one to see its numbers and their sources.`)]));
    }

    dialog.replaceChildren(
      el(
        'form',
        {
          method: 'dialog',
          onsubmit: (event) => {
            event.preventDefault();
            if (list.value) {
              taken = list.value;
              dialog.close();
            }
          },
        },
        el('h2', {id: 'dialog-title'}, 'Add a crop'),
        el('div', {class: 'field'}, el('label', {for: 'book-search'}, 'Name, or flower, vegetable, herb'), search),
        el('div', {class: 'field'}, el('label', {for: 'book-list'}, 'Crops'), list),
        shown,
        el('div', {class: 'row'}, add, button('Cancel', () => dialog.close())),
      ),
    );
    narrow();
    dialog.addEventListener('close', () => resolve(taken), {once: true});
    dialog.showModal();
    search.focus();
  });
}

/** Spaces and hyphens are alike, and so are small letters and others. */
const plain = (name) => name.trim().toLowerCase().replace(/[\s-]+/g, '-');

const called = ({name, also}) => (also.length ? `${name}, also ${also.join(', ')}` : name);

/** What it holds, under the names of the page's fields. */
function table(crop, [title, keys]) {
  const rows = keys.filter(([key]) => crop.values[key]).map(([key, label]) =>
    el('tr', {}, el('th', {scope: 'row'}, label), el('td', {}, crop.values[key])));
  return rows.length ? el('table', {class: 'entry'}, el('caption', {}, title), el('tbody', {}, rows)) : null;
}

function entry(crop, groups) {
  const weeks = crop.weeks ? `, ${crop.weeks} weeks from sowing to the bed where nothing waits` : '';
  return [
    el('p', {}, `${called(crop)}: ${crop.kind}${weeks}. It goes into your crop list as it stands here, germinating in your own places of these kinds; put your own numbers in wherever you have any.`),
    el('div', {class: 'entries'}, groups.map((group) => table(crop, group)).filter(Boolean)),
    el('details', {}, el('summary', {}, 'The file’s own text, with a source beside each number'),
      el('pre', {class: 'entry', tabindex: '0', 'aria-label': `The entry of ${crop.name}`}, crop.text)),
    el('p', {class: 'hint'}, 'Sources'),
    el('ul', {class: 'hint'}, crop.sources.map((s) => el('li', {}, `[${s.tag}] ${s.reference}`))),
  ];
}
