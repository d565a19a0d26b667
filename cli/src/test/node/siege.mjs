// Asks the server of a lesson for what it must refuse, as a program that means harm would, while the
// lesson goes on. Answers what was not refused; each try names the status that is expected (RFC 9110).
import {connect} from 'node:net';

const SLOW = 1000;
const SLOW_MS = 4000;

function ask(port, head, body = '') {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1');
    let heard = '';
    socket.setTimeout(15000, () => { socket.destroy(); resolve('no answer'); });
    socket.on('data', bytes => { heard += bytes; });
    socket.on('close', () => resolve(heard.split(' ')[1] ?? 'no answer'));
    socket.on('error', reject);
    const length = body ? `Content-Length: ${Buffer.byteLength(body)}\r\n` : '';
    socket.end(`${head}${length}Connection: close\r\n\r\n${body}`);
  });
}

// A thousand callers who have said half of what they want; afterwards the page still answers.
async function slowCallers(port) {
  const all = [];
  for (let i = 0; i < SLOW; i += 1) {
    const socket = connect(port, '127.0.0.1');
    socket.on('error', () => {});
    socket.write('POST /do/finish HTTP/1.1\r\nHos');
    all.push(socket);
  }
  await new Promise(resolve => setTimeout(resolve, SLOW_MS));
  return () => all.forEach(socket => socket.destroy());
}

export async function siege(origin, cookie) {
  const {port, host} = new URL(origin);
  const begin = `Host: ${host}\r\n`;
  const known = `Cookie: ${cookie}\r\n`;
  const own = `Origin: ${origin}\r\n`;
  const tries = [
    ['foreign host', 403, `GET / HTTP/1.1\r\nHost: golf.example:${port}\r\n${known}`],
    ['foreign origin', 403, `POST /do/finish HTTP/1.1\r\n${begin}${known}Origin: http://elsewhere.example\r\n`, '{}'],
    ['no origin', 403, `POST /do/finish HTTP/1.1\r\n${begin}${known}`, '{}'],
    ['other site', 403, `POST /do/finish HTTP/1.1\r\n${begin}${known}${own}Sec-Fetch-Site: cross-site\r\n`, '{}'],
    ['no token', 403, `POST /do/finish HTTP/1.1\r\n${begin}${own}`, '{}'],
    ['no token for events', 403, `GET /events HTTP/1.1\r\n${begin}`],
    ['guessed token', 403, `POST /do/finish HTTP/1.1\r\n${begin}${own}Cookie: ${cookie.replace(/=.{6}/, '=000000')}\r\n`, '{}'],
    ['GET on a change', 404, `GET /do/finish HTTP/1.1\r\n${begin}${known}${own}`],
    ['PUT', 405, `PUT /do/finish HTTP/1.1\r\n${begin}${known}${own}`, '{}'],
    ['path', 404, `GET /..%2f..%2fetc%2fpasswd HTTP/1.1\r\n${begin}${known}`],
    ['another path', 404, `GET /document/../../etc/passwd HTTP/1.1\r\n${begin}${known}`],
    ['long body', 413, `POST /do/note HTTP/1.1\r\n${begin}${known}${own}`, `{"a":"${'x'.repeat(9000)}"}`],
    ['no pairing where none may', 403, `POST /pair HTTP/1.1\r\n${begin}${own}`, '{"code":"123456"}'],
  ];
  const wrong = [];
  const end = await slowCallers(port);
  for (const [name, expected, head, body] of tries) {
    const got = await ask(port, head, body);
    if (got !== String(expected)) wrong.push(`${name}: ${got}, ${expected} expected`);
  }
  const page = await ask(port, `GET / HTTP/1.1\r\n${begin}${known}`);
  if (page !== '200') wrong.push(`the page beside ${SLOW} slow callers: ${page}`);
  end();
  return wrong;
}
