// The season, the rounds and the weather record.
import {el, field} from '/fields.js';

const DAYS = ['MONDAY', 'TUESDAY', 'WEDNESDAY', 'THURSDAY', 'FRIDAY', 'SATURDAY', 'SUNDAY'];

export function weather(page) {
  const {cells, own} = page.state.head;
  const of = (key, label, more = {}) =>
    field({
      at: `head ${key}`,
      value: cells[key] ?? '',
      label,
      hint: page.state.defaults.head[key],
      isOwn: cells.extends && own.includes(key),
      faults: page.state.faults.filter((f) => f.list === '' && (f.key === key || f.key === key.split('.')[0]) && f.key !== ''),
      changed: (value) => page.edit([{do: 'head', key, value}]),
      ...more,
    });
  const records = [...new Set([cells.weather ?? '', ...page.state.records])].map((t) => [t, t]);
  return [
    el('fieldset', {}, el('legend', {}, 'The season'), el('div', {class: 'grid2'},
      of('name', 'Name of the scenario', {isWide: true}),
      of('season.start', 'First day'),
      of('season.end', 'Last day'),
    )),
    el('fieldset', {}, el('legend', {}, 'The weather record'),
      el('div', {class: 'grid2'},
        of('weather', 'File', {choices: records, isWide: true}),
        of('frost-at', 'A night is a frost at'),
      ),
      page.state.isExampleWeather ? el('p', {class: 'hint', id: 'example-record'}, 'This record is an invented example’s. Take your own below: days with their lowest and highest temperature. If your weather service gives another form, the command “propcap weather” makes such a record of it.') : null,
      el('p', {class: 'hint'}, page.state.years ? `It covers the season in ${page.state.years}.` : 'It cannot be read yet.'),
      el('div', {class: 'row'}, el('label', {for: 'record'}, 'Take another record (CSV with date,tmin,tmax)'), el('input', {
        id: 'record',
        type: 'file',
        accept: '.csv,text/csv',
        onchange: (event) => take(page, event.target.files[0]),
      })),
    ),
    el('fieldset', {}, el('legend', {}, 'The rounds'), el('div', {class: 'grid2'},
      of('rounds.at', 'At'),
    ),
      el('p', {id: 'rest-days', class: 'hint'}, 'Rest days: on these nobody sows, moves, pots on or plants out; the work waits for the next day.'),
      el('div', {class: 'row', role: 'group', 'aria-labelledby': 'rest-days'}, DAYS.map((day) => restDay(page, day))),
      page.state.faults.filter((f) => f.list === '' && f.key === 'rounds.rest').map((f) => el('span', {class: 'fault'}, f.words)),
    ),
  ];
}

function restDay(page, day) {
  const box = el('input', {
    type: 'checkbox',
    'data-at': `rest ${day}`,
    onchange: () => {
      const isRest = box.checked;
      page.edit(() => {
        const days = DAYS.filter((each) => (each === day ? isRest : restDays(page).includes(each)));
        return [{do: 'head', key: 'rounds.rest', value: days.join(', ')}];
      });
    },
  });
  box.checked = restDays(page).includes(day);
  return el('label', {class: 'check'}, box, day.charAt(0) + day.slice(1).toLowerCase());
}

const restDays = (page) => (page.state.head.cells['rounds.rest'] ?? '').split(',').map((d) => d.trim().toUpperCase());

/** Takes a file from this machine as the weather record; it is saved beside the scenario. */
async function take(page, file) {
  if (file) {
    const name = file.name.replace(/[^\p{L}\p{N} ._-]/gu, '-');
    await page.edit([{do: 'record', name, text: await file.text()}]);
  }
}
