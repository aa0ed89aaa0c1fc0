// What goes to the server and comes from it. All of it is on this machine.

/** A refusal in the server's words: of a field, or of what was typed and may be one of some readings. */
export class Refused extends Error {
  constructor(status, {refused, field, why, typed, readings = []}) {
    super(refused);
    Object.assign(this, {status, field, why, typed, readings});
  }
}

/** There is no server: the program was stopped. */
export class Gone extends Error {}

async function answer(asked) {
  const response = await asked.catch(() => {
    throw new Gone();
  });
  const isJson = (response.headers.get('Content-Type') || '').includes('json');
  const body = isJson ? await response.json() : await response.text();
  if (!response.ok) {
    throw new Refused(response.status, isJson ? body : {refused: body});
  }
  return body;
}

export async function get(path, values = {}) {
  const query = new URLSearchParams(values).toString();
  return answer(fetch(query ? `${path}?${query}` : path));
}

export async function post(path, values = {}) {
  return answer(
    fetch(path, {
      method: 'POST',
      headers: {'Content-Type': 'application/json'},
      body: JSON.stringify(values),
    }),
  );
}

/** Listens to the server's news; says whether the server is there. */
export function listen(news, there) {
  const source = new EventSource('/api/events');
  for (const name of ['state', 'forecast', 'study']) {
    source.addEventListener(name, (event) => news(name, JSON.parse(event.data)));
  }
  source.onopen = () => there(true);
  source.onerror = () => there(false);
}
