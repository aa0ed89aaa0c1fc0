// Small pieces of the page: elements, fields with their faults, and dialogs.

/** An element with attributes, listeners (onclick: ...) and children. */
export function el(name, attributes = {}, ...children) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith('on')) {
      element.addEventListener(key.slice(2), value);
    } else if (value === true) {
      element.setAttribute(key, '');
    } else if (value !== false && value !== null && value !== undefined) {
      element.setAttribute(key, value);
    }
  }
  element.append(...children.flat(Infinity).filter((child) => child !== null && child !== undefined));
  return element;
}

export function button(text, onclick, attributes = {}) {
  return el('button', {type: 'button', onclick, ...attributes}, text);
}

/** A date as it is read aloud; what is none as it is. */
export function inWords(date) {
  return /^\d{4}-\d{2}-\d{2}$/.test(date)
    ? new Date(`${date}T12:00:00`).toLocaleDateString('en-GB', {day: 'numeric', month: 'long', year: 'numeric'})
    : date;
}

/** A value in whose place, or among whose words, a known word is put for one that is like it. */
function mended(value, {wrong, meant}) {
  return value
    .split(',')
    .map((word) => (word.trim() === wrong ? word.replace(wrong, meant) : word))
    .join(',');
}

let last = 0;

/** An input or a choice, with its fault where it has one; tells of a changed value. */
export function control({at, value, choices, label, faults = [], hint, size, changed}) {
  const id = `f${++last}`;
  const told = faults.length ? `${id}-fault` : null;
  const common = {
    id,
    'data-at': at,
    'aria-label': label,
    'aria-invalid': faults.length ? 'true' : null,
    'aria-describedby': told,
  };
  const input = choices
    ? el('select', common, choices.map(([key, words]) => el('option', {value: key}, words)))
    : el('input', {
        ...common,
        type: 'text',
        placeholder: hint,
        size,
        autocomplete: 'off',
        spellcheck: 'false',
      });
  input.value = value;
  input.dataset.was = input.value;
  const commit = () => {
    if (input.value !== input.dataset.was) {
      input.dataset.was = input.value;
      changed(input.value.trim());
    }
  };
  input.addEventListener('change', commit);
  // What was typed before the page was redrawn is no change to the browser.
  input.addEventListener('blur', commit);
  const fault = told
    ? el('span', {class: 'fault', id: told}, faults.map((f) => f.words).join(' · '), faults.map((f) => mend(f, input, at, changed)))
    : null;
  return {input, fault, id};
}

/** What is like a known word is mended by a press. */
function mend(fault, input, at, changed) {
  const better = fault.meant ? mended(input.value, fault) : input.value;
  return better === input.value
    ? null
    : button(`Put ${fault.meant}`, () => changed(better), {class: 'mend', 'data-at': `mend ${at} ${fault.meant}`});
}

/** The same with a label above it. */
export function field(options) {
  const {input, fault, id} = control({...options, label: null});
  return el(
    'div',
    {class: `field${options.isOwn ? ' own' : ''}${options.isWide ? ' wide' : ''}`},
    el('label', {for: id}, options.label),
    input,
    fault,
  );
}

/** Puts new content in a place; what is being typed there, and the cursor, stay. */
export function fill(place, ...content) {
  const active = document.activeElement;
  const at = place.contains(active) ? active.dataset.at : null;
  const typed = at && 'was' in active.dataset && active.value !== active.dataset.was ? active.value : null;
  const cursor = at && active.tagName === 'INPUT' ? [active.selectionStart, active.selectionEnd] : null;
  if (typed !== null) {
    // It is carried over below, and must not be taken for finished here.
    active.dataset.was = active.value;
  }
  const boxes = [...place.querySelectorAll('[data-scroll]')].map((b) => [b.dataset.scroll, b.scrollTop, b.scrollLeft]);
  const open = new Set([...place.querySelectorAll('details[data-open][open]')].map((d) => d.dataset.open));
  place.replaceChildren(...content.flat(Infinity).filter(Boolean));
  for (const details of place.querySelectorAll('details[data-open]')) {
    details.open = details.open || open.has(details.dataset.open);
  }
  for (const [name, top, left] of boxes) {
    const box = place.querySelector(`[data-scroll="${name}"]`);
    if (box) {
      box.scrollTop = top;
      box.scrollLeft = left;
    }
  }
  if (at) {
    const again = place.querySelector(`[data-at="${CSS.escape(at)}"]`);
    if (again) {
      if (typed !== null) {
        again.value = typed;
      }
      again.focus({preventScroll: true});
      if (cursor && cursor[0] !== null && again.tagName === 'INPUT') {
        again.setSelectionRange(...cursor);
      }
    }
  }
}

/** Puts a piece of the report in a place; its charts can be scrolled by keyboard where they are wide. */
export function report(place, html) {
  // The server made this of the report's own templates, which escape what growers write.
  place.innerHTML = html;
  for (const chart of place.querySelectorAll('.chart')) {
    chart.tabIndex = 0;
    chart.setAttribute('role', 'region');
    chart.setAttribute('aria-label', chart.querySelector('svg')?.getAttribute('aria-label') ?? 'Chart');
  }
  return place;
}

/** Asks for a few values; null where it is called off. */
export function ask(title, words, fields, yes) {
  const dialog = document.getElementById('dialog');
  return new Promise((resolve) => {
    const inputs = fields.map((f) => {
      const id = `d-${f.key}`;
      const input = f.choices
        ? el('select', {id}, f.choices.map(([key, text]) => el('option', {value: key}, text)))
        : el('input', {id, type: 'text', required: f.isNeeded, pattern: f.pattern, title: f.means, placeholder: f.hint, autocomplete: 'off'});
      input.value = f.value ?? (f.choices ? f.choices[0][0] : '');
      return el('div', {class: `field${f.isWide ? ' wide' : ''}`}, el('label', {for: id}, f.label), input);
    });
    let values = null;
    dialog.replaceChildren(
      el(
        'form',
        {
          method: 'dialog',
          onsubmit: (event) => {
            event.preventDefault();
            values = Object.fromEntries(
              fields.map((f, i) => [f.key, inputs[i].querySelector('input, select').value.trim()]),
            );
            dialog.close();
          },
        },
        el('h2', {id: 'dialog-title'}, title),
        words ? el('p', {class: 'hint'}, words) : null,
        el('div', {class: 'grid2'}, inputs),
        el(
          'div',
          {class: 'row'},
          el('button', {type: 'submit', class: 'main'}, yes),
          button('Cancel', () => dialog.close()),
        ),
      ),
    );
    dialog.addEventListener('close', () => resolve(values), {once: true});
    dialog.showModal();
    const first = dialog.querySelector('input, select');
    if (first) {
      first.focus();
      if (first.select) {
        first.select();
      }
    }
  });
}
