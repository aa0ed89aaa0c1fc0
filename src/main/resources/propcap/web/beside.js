// The scenarios that stand side by side: which is shown, and what-ifs more.
import {post} from '/server.js';
import {ask, button, el, fill} from '/fields.js';

const $ = (id) => document.getElementById(id);

/** The scenarios on the desk, and the way to one more. */
export function drawBeside(page) {
  const {state} = page;
  const open = state.scenarios.map((file) => {
    const press = button(page.title(file), () => show(page, file), {
      'aria-pressed': String(file === state.shown),
      'data-at': `show ${file}`,
      'data-file': file,
    });
    return file === state.base
      ? press
      : el(
          'span',
          {class: 'pair'},
          press,
          button('×', () => page.run(() => post('/api/close-beside', {name: file})), {
            'aria-label': `Close ${page.title(file)}`,
            'data-at': `close ${file}`,
          }),
        );
  });
  fill($('beside'), open, button('+ What if…', () => addWhatIf(page), {id: 'what-if', 'data-at': 'what-if'}));
}

function show(page, file) {
  page.turnTo(file);
  page.run(async () => {});
}

async function addWhatIf(page) {
  const {state} = page;
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
    await page.run(async () => {
      const done = asked.name
        ? await post('/api/open-beside', {name: asked.name})
        : await post('/api/what-if', {title: asked.title});
      page.turnTo(done.file);
    });
  }
}
