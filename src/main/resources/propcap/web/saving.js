// Saving: what is written, under which name, and what is asked before.
import {post} from '/server.js';
import {ask} from '/fields.js';

/** Whether to save what the commands will refuse. */
async function isSure(page) {
  return (
    !page.state.mends ||
    (await ask(
      `${page.toMend(page.state.mends)}; save all the same?`,
      'The commands refuse a scenario until it is mended. What is not saved is kept as well, and comes back.',
      [],
      'Save all the same',
    )) !== null
  );
}

export async function save(page, isOver = false) {
  // What was typed last is on its way.
  await page.settled;
  if (document.getElementById('dialog').open || !page.state.changed.length || !(await isSure(page))) {
    return;
  }
  const done = await page.run(() => post('/api/save', {over: String(isOver)}));
  if (done) {
    const {kept} = done;
    page.say(
      [
        `Saved: ${done.written.join(', ')}.`,
        kept.length ? `What was there before is kept as ${kept.join(', ')}.` : '',
        page.state.mends ? `${page.toMend(page.state.mends)}.` : '',
      ]
        .filter(Boolean)
        .join(' '),
    );
  }
}

/** Throws away what is not saved, once that is what is wanted. */
export async function discard(page) {
  await page.settled;
  const asked = await ask(
    'Discard all that is not saved?',
    `It is changed in ${page.state.changed.join(', ')}. The files stay as they are on disk; Undo brings back what you discard, until you close the page's program.`,
    [],
    'Discard it',
  );
  if (asked) {
    await page.run(() => post('/api/discard'));
  }
}

export async function saveAs(page) {
  const asked = await ask(
    'Save as',
    'The scenario goes into a file of another name in the same folder; the one it came from stays as it was saved last.',
    [{key: 'name', label: 'File', value: page.state.base.replace(/\.ya?ml$/, '-2.yaml'), isWide: true}],
    'Save',
  );
  if (asked && (await isSure(page))) {
    const done = await page.run(async () => {
      const result = await post('/api/save-as', {name: asked.name});
      page.turnTo('');
      return result;
    });
    if (done) {
      page.say(`Saved: ${done.written.join(', ')}.${page.state.mends ? ` ${page.toMend(page.state.mends)}.` : ''}`);
    }
  }
}
