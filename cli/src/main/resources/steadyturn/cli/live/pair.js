// Another screen asks to be let in: the code stands on the laptop.
import {readWords, say} from './words.js';
import {part, field, show} from './parts.js';

await readWords();
const is = part('p', {role: 'status'});
document.getElementById('stage').replaceChildren(part('form', {class: 'form', onsubmit: pair},
    part('h1', {}, say('pair.title')), part('p', {}, say('pair.do')),
    field(say('pair.code'), 'code', {inputmode: 'numeric', autocomplete: 'off', maxlength: 6}), is,
    part('button', {class: 'first', type: 'submit'}, say('pair.open'))));

async function pair(event) {
  event.preventDefault();
  const code = new FormData(event.target).get('code').trim();
  const answer = await fetch('pair', {
    method: 'POST',
    headers: {'Content-Type': 'application/json'},
    body: JSON.stringify({code}),
  });
  if (answer.ok) location.reload();
  else show(is, say('pair.wrong'));
}
