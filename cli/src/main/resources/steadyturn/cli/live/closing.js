// The end of a lesson: what it was for and what to work on, every ball as the analysis of the recording
// tells it, the pages to send.
import {say} from './words.js';
import {part, button, verdict, was, withUnit} from './parts.js';

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
    text.replaceChildren(...(its.about ? about(its.about) : []),
        part('h2', {}, say('closing.next')),
        part('p', {class: 'order'}, its.aim || say('closing.nothing')),
        ...[its.work, its.relation, its.good ? say('closing.good', its.good) : '', its.left]
            .filter(Boolean).map(line => part('p', {}, line)));
    const balls = [...lesson.balls.values()];
    numbers.replaceChildren(...(balls.length > 0 ? [table(balls), ...reasons(balls)] : []),
        part('p', {class: 'small'}, say('closing.half')),
        part('p', {class: 'small'}, say('closing.recordings', its.swings, its.recordings)));
  };
}

function about(its) {
  return [part('h2', {}, say('closing.worked')),
    part('p', {class: 'about'}, part('span', {}, its.name), part('b', {}, withUnit(its.big)),
        part('span', {}, `${its.big.half} ${its.big.way}`),
        ...verdict(its), part('span', {}, its.goal))];
}

function table(balls) {
  const columns = balls[0].rows.map(({name, big}) => [name, big.unit ? `${name}, ${big.unit}` : name]);
  return part('table', {},
      part('caption', {}, say('closing.table')),
      part('thead', {}, part('tr', {}, part('th', {scope: 'col'}, say('closing.ball')),
          ...columns.map(([, head]) => part('th', {scope: 'col'}, head)))),
      part('tbody', {}, ...balls.map(ball => part('tr', {},
          part('th', {scope: 'row'}, `${ball.number} ${ball.club ? ball.title : ball.kindWord}${ball.isDiscarded ? ` (${say('ball.out')})` : ''}`),
          ...columns.map(([name, head]) => cell(head, ball.rows.find(row => row.name === name)))))));
}

// A value in the words and steps of the balls' own page, so that both tell the same.
function cell(head, row) {
  const {number, half, short} = row?.big ?? {number: '\u2013'};
  return part('td', {'data-name': head, 'data-id': row?.big.isThere ? row.id : false}, part('div', {},
      part('span', {}, [(row?.isEstimated ? '~' : '') + number, half].filter(Boolean).join(' ')),
      short ? part('span', {}, short) : '', row?.was ? part('span', {class: 'was'}, was(row)) : ''));
}

// Why values are estimated or not given: each reason once, with the balls that it holds for.
function reasons(balls) {
  const found = new Map();
  for (const ball of balls) {
    for (const row of ball.rows.filter(one => one.why)) {
      const key = `${row.isEstimated ? 'estimated' : 'withheld'} ${row.why}`;
      if (!found.has(key)) found.set(key, {of: new Set(), in: new Set(), row});
      found.get(key).of.add(row.name);
      found.get(key).in.add(ball.number);
    }
  }
  const all = [...found.values()];
  return ['estimated', 'withheld'].flatMap(kind => {
    const its = all.filter(({row}) => row.isEstimated === (kind === 'estimated'));
    return its.length === 0 ? [] : [part('p', {class: 'small'}, say(`closing.${kind}`)),
      part('ul', {class: 'small'}, ...its.map(one => part('li', {},
          say(one.in.size === 1 ? 'closing.where' : 'closing.wheres', [...one.of].join(', '), [...one.in].join(', '), one.row.why))))];
  });
}
