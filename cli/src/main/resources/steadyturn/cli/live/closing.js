// The end of a lesson: what to work on, every ball as the analysis of the recording tells it, the pages to send.
import {say} from './words.js';
import {part, button} from './parts.js';

export function closing(root, lesson) {
  const text = part('section');
  const numbers = part('section', {class: 'numbers'});
  root.replaceChildren(part('h1', {}, say('closing.title')), text,
      part('p', {class: 'row'},
          part('a', {class: 'button first', href: 'document/player', target: '_blank'}, say('closing.player')),
          part('a', {class: 'button', href: 'document/teacher', target: '_blank'}, say('closing.teacher')),
          button(say('closing.another'), () => lesson.ask('another'), {id: 'another'})),
      numbers);
  return state => {
    const its = state.closing;
    if (!its) return;
    text.replaceChildren(
        part('p', {class: 'order'}, its.aim || say('closing.nothing')),
        its.work ? part('p', {}, its.work) : '',
        its.good ? part('p', {}, say('closing.good', its.good)) : '',
        its.left > 0 ? part('p', {}, say('closing.left', its.left)) : '',
        part('p', {class: 'small'}, say('closing.recordings', its.swings, its.recordings)));
    const balls = [...lesson.balls.values()];
    if (balls.length === 0) return;
    const names = balls[0].rows.map(row => row.name);
    numbers.replaceChildren(part('table', {},
        part('caption', {}, say('closing.table')),
        part('thead', {}, part('tr', {}, part('th', {scope: 'col'}, say('closing.ball')),
            ...names.map(name => part('th', {scope: 'col'}, name)))),
        part('tbody', {}, ...balls.map(ball => part('tr', {},
            part('th', {scope: 'row'}, `${ball.number} ${ball.club ? ball.title : ball.kindWord}${ball.isDiscarded ? ` (${say('ball.out')})` : ''}`),
            ...names.map(name => part('td', {},
                ball.rows.find(row => row.name === name)?.figure ?? '–')))))));
  };
}
