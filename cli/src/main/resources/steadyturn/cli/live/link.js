// What comes from the program and what is asked of it. When it is gone the page says so and waits:
// the browser tries again by itself, and a page that slept is told everything anew.
const SILENT_MS = 6000;
let heard = 0;
let isThere = false;

export function listen(hears, tells) {
  const events = new EventSource('events');
  for (const name of Object.keys(hears)) {
    events.addEventListener(name, event => {
      alive(tells);
      hears[name](JSON.parse(event.data));
    });
  }
  events.addEventListener('beat', () => alive(tells));
  events.addEventListener('error', () => lost(tells, events));
  setInterval(() => {
    if (isThere && performance.now() - heard > SILENT_MS) lost(tells, events);
  }, 1000);
  document.addEventListener('visibilitychange', () => {
    const slept = performance.now() - heard > SILENT_MS;
    if (!document.hidden && (slept || events.readyState === EventSource.CLOSED)) location.reload();
  });
}

function alive(tells) {
  heard = performance.now();
  if (!isThere) tells('there');
  isThere = true;
}

// A closed stream is a program that was started anew: its page has another address.
function lost(tells, events) {
  isThere = false;
  tells(events.readyState === EventSource.CLOSED ? 'other' : 'gone');
}

// Asks for a change; answers why it was not done, or an empty text.
export async function ask(what, facts = {}) {
  try {
    const answer = await fetch(`do/${what}`, {
      method: 'POST',
      headers: {'Content-Type': 'application/json'},
      body: JSON.stringify(facts),
    });
    return answer.ok ? (await answer.json()).why : 'gone';
  } catch {
    return 'gone';
  }
}
