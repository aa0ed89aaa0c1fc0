// Pasting from a spreadsheet: what it would do to the plan is looked at before it is done.
import {button, el, inWords} from '/fields.js';
import {post, Refused} from '/server.js';

const $ = (id) => document.getElementById(id);

const sowings = (n) => (n === 1 ? '1 sowing' : `${n} sowings`);
const cells = (n) => (n === 1 ? 'one cell' : `${n} cells`);

/** What is pasted in a field goes on from there, down the rows that are shown; a single cell is the browser's own affair. */
export function pasteInto(event, page, headings, key, rows) {
  const text = event.clipboardData.getData('text/plain');
  if (!text.includes('\t') && !/[\r\n]./.test(text)) {
    return;
  }
  event.preventDefault();
  const more = {from: key, rows: rows.join(',')};
  page.run(() => send(page, {text, ...more, write: 'right'})).then((told) => {
    if (told?.isWritten) {
      page.say(`${done(told)} Undo takes it back.`);
    } else if (told) {
      openPaste(page, headings, text, more, told);
    }
  });
}

const send = (page, asked) => post('/api/paste', {file: page.state.shown, version: page.state.version, ...asked});

function done({added, changed}) {
  const parts = [added ? `${sowings(added)} added` : '', changed ? `${sowings(changed)} changed` : ''].filter(Boolean);
  return parts.length ? `${parts.join(', ')}.` : 'All of that stood in the plan already.';
}

/** Opens the dialog, empty or with what was pasted elsewhere. */
export function openPaste(page, headings, text = '', more = {}, told = null) {
  const dialog = $('dialog');
  const words = Object.fromEntries(headings);
  let said = {...more};
  let looked = 0;
  const box = el('textarea', {id: 'pasted', rows: '4', wrap: 'off', spellcheck: 'false', autocomplete: 'off'});
  box.value = text;
  const shown = el('div', {id: 'paste-shown'});
  const status = el('p', {id: 'paste-status', role: 'status'});
  const yes = button('Add to the plan', () => write(), {class: 'main', disabled: true, 'data-at': 'paste it'});
  dialog.replaceChildren(
    el('h2', {id: 'dialog-title'}, 'Paste from a spreadsheet'),
    el('p', {class: 'hint', id: 'paste-hint'}, `Copy the rows in the spreadsheet, with their headings if they have any, and paste them here. Without headings the columns are: ${headings.map(([, w]) => w).join(', ')}. A row whose sowing is in the plan already changes that one.`),
    el('div', {class: 'field wide'}, el('label', {for: 'pasted'}, 'The copied cells'), box),
    shown,
    status,
    el('div', {class: 'row'}, yes, button('Cancel', () => dialog.close())),
  );
  box.addEventListener('input', () => {
    // Another table has other columns, and is for no field.
    said = {};
    look();
  });
  dialog.classList.add('broad');
  dialog.addEventListener('close', () => dialog.classList.remove('broad'), {once: true});
  dialog.showModal();
  box.focus();
  if (told) {
    show(told);
  }

  async function look() {
    const now = ++looked;
    yes.disabled = true;
    if (!box.value.trim()) {
      shown.replaceChildren();
      status.textContent = '';
      return;
    }
    try {
      await page.settled;
      const answer = await send(page, {text: box.value, ...said});
      if (now === looked) {
        show(answer);
      }
    } catch (refusal) {
      if (now === looked) {
        shown.replaceChildren();
        status.textContent = refusal instanceof Refused ? `This cannot be pasted: ${refusal.message}.` : 'The server does not answer.';
      }
    }
  }

  function show(answer) {
    const at = document.activeElement?.dataset.at;
    shown.replaceChildren(
      ...[
        answer.unclear ? question(answer.unclear) : null,
        answer.leftOut.length ? el('p', {class: 'fault', id: 'left-out'}, `Left out: ${answer.leftOut.join(', ')}.`) : null,
        answer.others.length ? el('ul', {class: 'faults'}, answer.others.map((w) => el('li', {class: 'fault'}, w))) : null,
        answer.heads.length ? meant(answer) : null,
        answer.rows.length && !answer.unclear ? preview(answer) : null,
      ].filter(Boolean),
    );
    const {added, changed, same, wrong} = answer;
    const isAny = added + changed > 0;
    status.textContent = answer.unclear
      ? 'Say first which number is the day.'
      : [
          !isAny && !same ? 'There is no row in it.' : '',
          wrong ? `${wrong === 1 ? 'One cell is' : `${wrong} cells are`} to mend, here or later in the plan.` : '',
          same ? `${sowings(same)} ${same === 1 ? 'stands' : 'stand'} in the plan just so.` : '',
        ].filter(Boolean).join(' ');
    const what = [added ? `add ${sowings(added)}` : '', changed ? `change ${sowings(changed)}` : ''].filter(Boolean).join(' and ');
    yes.textContent = isAny ? `${what[0].toUpperCase()}${what.slice(1)}${wrong ? `, and mend ${cells(wrong)} in the plan` : ''}` : 'Add to the plan';
    yes.disabled = !isAny || Boolean(answer.unclear);
    if (at && !dialog.contains(document.activeElement)) {
      // What was pressed is drawn anew, or is answered and gone.
      (shown.querySelector(`[data-at="${CSS.escape(at)}"]`) ?? (yes.disabled ? box : yes)).focus();
    }
  }

  /** Asked once for all dates of which the table does not tell it. */
  function question(unclear) {
    const choice = (word, text) =>
      button(`${text}: ${unclear.text} is ${inWords(unclear[word])}`, () => say({order: word}), {'data-at': `order ${word}`});
    return el(
      'fieldset',
      {},
      el('legend', {}, 'Which number is the day?'),
      el('div', {class: 'row'}, choice('day', 'The first'), choice('month', 'The second')),
    );
  }

  function say(one) {
    said = {...said, ...one};
    look();
  }

  /** What each column is taken for, and a way to say it otherwise. */
  function meant({heads, columns, known}) {
    const choices = [...new Set([...known, ...columns.filter(Boolean)])];
    return el(
      'details',
      {class: 'small', open: columns.includes('')},
      el('summary', {}, 'What each column is taken for'),
      el(
        'div',
        {class: 'grid2'},
        heads.map((head, i) => {
          const id = `meant-${i}`;
          const select = el(
            'select',
            {
              id,
              'data-at': `meant ${i}`,
              onchange: () => say({columns: columns.map((c, j) => (j === i ? select.value : c === select.value ? '' : c)).join(',')}),
            },
            el('option', {value: ''}, 'left out'),
            choices.map((key) => el('option', {value: key}, words[key] ?? key)),
          );
          select.value = columns[i];
          return el('div', {class: 'field'}, el('label', {for: id}, head), select);
        }),
      ),
    );
  }

  function preview({rows, added, changed, columns}) {
    const used = [...new Set(['id', 'crop', ...headings.map(([key]) => key), ...columns])].filter((key) => key && (columns.includes(key) || key === 'id' || rows.some((r) => r.faults[key])));
    const all = added + changed;
    return el(
      'div',
      {class: 'sheetbox', tabindex: '0', role: 'region', 'aria-label': 'What the plan will have'},
      el(
        'table',
        {class: 'pasted'},
        rows.length < all ? el('caption', {}, `${rows.length} of ${all} rows, those to mend first`) : null,
        el('thead', {}, el('tr', {}, el('th', {scope: 'col'}, ''), used.map((key) => el('th', {scope: 'col'}, words[key] ?? key)))),
        el('tbody', {}, rows.map((row) => el('tr', {}, el('td', {}, row.isNew ? 'new' : 'changed'), used.map((key) => cell(row, key))))),
      ),
    );
  }

  function cell(row, key) {
    const was = row.was[key];
    return el(
      'td',
      {'data-label': words[key] ?? key, class: row.faults[key] ? 'wrong' : null},
      was !== undefined && was !== '' ? [el('s', {}, was), ' '] : null,
      row.cells[key] ?? (key === 'id' ? page.state.sowings[row.row]?.name ?? '' : ''),
      row.faults[key] ? el('span', {class: 'fault'}, row.faults[key]) : null,
    );
  }

  async function write() {
    yes.disabled = true;
    const told2 = await page.run(() => send(page, {text: box.value, ...said, write: 'seen'}), (refused) => {
      status.textContent = `This cannot be pasted: ${refused}.`;
    });
    if (told2?.isWritten) {
      dialog.close();
      page.say(`${done(told2)} Undo takes it back.`);
    }
  }
}
