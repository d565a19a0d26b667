// After each ball: one number and one picture first, then what lies around them.
import {say} from './words.js';
import {part, button, show, verdict as framed, was, withUnit} from './parts.js';
import {hinge} from './hinge.js';
import {curves, whyNot} from './curves.js';

const NEXT = 3;

export function balls(root, lesson) {
  let chosen = '';
  let against = '';
  let picture;
  const name = part('h1', {class: 'main-name'});
  const number = part('p', {class: 'main-number', id: 'main'});
  const way = part('p', {class: 'main-way'});
  const verdict = part('p', {class: 'main-verdict'});
  const aim = part('p', {class: 'main-aim'});
  const rows = part('dl', {class: 'figures'});
  const more = part('dl', {class: 'figures more'});
  const strip = part('ol', {class: 'strip', 'aria-label': say('ball.strip')});
  const difference = part('section', {class: 'difference'});
  const holder = part('div', {class: 'picture'});
  const notDrawn = part('p', {class: 'not-drawn'});
  const held = part('select', {'aria-label': say('ball.against')});
  held.addEventListener('change', () => { against = held.value; update(lesson.state); });
  const club = part('input', {maxlength: 30, 'aria-label': say('ball.club'), list: 'clubs', placeholder: say('ball.club')});
  club.addEventListener('change', () => lesson.ask('club', {club: club.value}));
  const has = () => lesson.balls.get(chosen);
  const act = (what, facts = {}) => () => lesson.ask(what, {id: chosen, ...facts});
  const play = slowness => () => picture?.play(slowness);
  const tools = {
    discard: button(say('ball.discard'), act('discard'), {'data-key': 'x', id: 'discard'}),
    note: button(say('ball.note'), note, {'data-key': 'n', id: 'note'}),
    model: button(say('ball.model'), act('model'), {'data-key': 'm', id: 'model'}),
    undo: button(say('ball.undo'), act('undo'), {'data-key': 'u', id: 'undo'}),
    curves: button(say('ball.curves'), () => has()?.path && curves(has(), lesson.balls.get(against)), {'data-key': 'k', id: 'curves'}),
  };
  const ends = [
    button(say('ball.drill'), () => lesson.ask('go', {to: 'drill'}), {id: 'to-drill'}),
    button(say('ball.steps'), () => lesson.ask('go', {to: 'steps'}), {id: 'to-steps'}),
    button(say('ball.finish'), finish, {id: 'finish'}),
  ];
  root.replaceChildren(
      part('section', {class: 'answer'}, name, number, way, verdict, aim, rows),
      part('section', {class: 'look'}, holder, part('p', {class: 'small'}, say('ball.half')),
          part('p', {class: 'row'}, button(say('ball.play'), play(1), {'data-key': 'p', id: 'play'}),
              button(say('ball.slow'), play(4), {'data-key': 's', id: 'slow'}), held, tools.curves)),
      part('nav', {class: 'row', 'aria-label': say('ball.tools')}, club,
          part('datalist', {id: 'clubs'}, ...say('ball.clubs').split(',').map(value => part('option', {value: value.trim()}))),
          tools.discard, tools.note, tools.model, tools.undo, part('span', {class: 'gap'}), ...ends),
      part('div', {class: 'below'}, strip, part('details', {}, part('summary', {}, say('ball.more')), more)),
      difference);

  function note() {
    const ball = has();
    if (!ball) return;
    const box = part('dialog', {'aria-label': say('ball.note')});
    const words = part('input', {value: ball.note, maxlength: 200, 'aria-label': say('ball.note')});
    box.append(part('form', {method: 'dialog', onsubmit: () => lesson.ask('note', {id: ball.id, note: words.value})},
        part('h2', {}, say('ball.note.of', ball.number)), words, part('button', {class: 'first'}, say('ball.note.keep'))));
    document.body.append(box);
    box.addEventListener('close', () => box.remove());
    box.showModal();
  }

  async function finish() {
    ends[2].disabled = true;
    ends[2].textContent = say('ball.finishing');
    if (await lesson.ask('finish')) ends[2].disabled = false;
  }

  function choose(id) {
    chosen = id;
    update(lesson.state);
  }

  function update(state) {
    const all = [...lesson.balls.values()];
    if (lesson.fresh) {
      chosen = lesson.fresh;
      lesson.fresh = '';
    }
    if (!has()) chosen = all.at(-1)?.id ?? '';
    const ball = has();
    if (document.activeElement !== club) club.value = state.club;
    root.classList.toggle('empty', !ball);
    if (!ball) {
      show(name, say('ball.wait'));
      show(way, say('ball.wait.do'));
    } else {
      answer(ball);
    }
    tellDifference(state.difference ?? []);
    draw(state, ball);
    fillStrip(all);
    fillHeld(all);
    for (const one of Object.values(tools)) one.disabled = !ball;
    tools.curves.disabled = !ball?.path;
    tools.discard.firstChild.textContent = say(ball?.isDiscarded ? 'ball.count' : 'ball.discard');
    tools.model.firstChild.textContent = say(ball?.isModel ? 'ball.no-model' : 'ball.model');
  }

  function answer(ball) {
    const [main, ...others] = ball.rows;
    show(name, [say(ball.isDiscarded ? 'ball.main.out' : 'ball.main', ball.number, main.name), ball.note].filter(Boolean).join(' · '));
    number.replaceChildren(main.big.number, part('span', {class: 'unit'}, main.big.isThere ? main.big.unit : ''),
        part('span', {class: 'half'}, main.big.half));
    show(way, [main.big.way, ...standing(main)].filter(Boolean).join(' · '));
    verdict.replaceChildren(...framed(main));
    way.classList.toggle('why', !main.big.isThere);
    show(aim, beside(main).filter(Boolean).join(' · '));
    rows.replaceChildren(...others.slice(0, NEXT).map(row => figure(row, main)));
    more.replaceChildren(...others.slice(NEXT).map(row => figure(row, main)),
        ...ball.flags.map(flag => part('p', {class: 'flag'}, flag)));
  }

  // What a value is held against; nothing where there is no value.
  function beside(row) {
    return row.big.isThere ? [row.goal, row.usual] : [];
  }

  function standing(row) {
    return [row.isEstimated ? say('ball.estimated') : '', was(row)];
  }

  function figure(row, main) {
    const isSame = !row.big.isThere && row.big.way === main.big.way;
    return part('div', {class: row.isChanged ? 'changed' : ''}, part('dt', {}, row.name, ...framed(row, true)),
        part('dd', {}, part('b', {}, withUnit(row.big)), part('span', {class: 'half'}, row.big.half),
            part('span', {class: 'way'}, [isSame ? '' : row.big.short || row.big.way, ...beside(row),
              ...standing(row)].filter(Boolean).join(' · '))));
  }

  let drawnOf = '';
  function draw(state, ball) {
    const other = lesson.balls.get(against);
    const key = JSON.stringify([ball?.id, ball?.path, other?.id, ball?.rows[0].big.way]);
    if (key === drawnOf) return;
    drawnOf = key;
    picture ??= hinge({half: state.halfHipsMm, side: state.handed === 'left' ? -1 : 1});
    if (!holder.firstChild) holder.append(picture.svg, notDrawn);
    const why = ball && !placed(ball.path) ? whyNot(ball, 'pelvis') : '';
    show(notDrawn, why && say('ball.not-drawn', why === ball.rows[0].big.way ? say('ball.same') : why));
    picture.draw(placed(ball?.path), placed(other?.path), ball ? say('hinge.alt', ball.number) : say('ball.wait'));
  }

  // Where places are not known there is nothing to draw from above; the curves of angles remain.
  function placed(path) {
    return path?.['pelvis.slide'] && path['pelvis.thrust'] ? path : undefined;
  }

  function tellDifference(lines) {
    const text = lines.join('\n');
    if (difference.dataset.of === text) return;
    difference.dataset.of = text;
    difference.replaceChildren(...lines.map(line => part('p', {}, line)));
  }

  function fillStrip(all) {
    const key = JSON.stringify([chosen, all.map(b => [b.id, b.isDiscarded, b.isModel, b.kind, b.rows[0]?.big, b.rows.some(r => r.isChanged)])]);
    if (strip.dataset.of === key) return;
    strip.dataset.of = key;
    strip.replaceChildren(...all.map(ball => part('li', {},
        button(String(ball.number), () => choose(ball.id), {
          class: `ball ${ball.kind} ${ball.isDiscarded ? 'out' : ''}`,
          'aria-current': ball.id === chosen ? 'true' : false,
          'aria-label': say('ball.of', ball.number, ball.title, ball.rows[0]?.figure ?? ''),
        }), part('span', {'aria-hidden': 'true'}, (ball.rows[0]?.big.number ?? '') + (ball.isModel ? ' ★' : '')),
        ball.rows[0]?.isChanged ? part('span', {'aria-hidden': 'true'}, say('ball.changed.short')) : '')));
    strip.scrollTop = strip.scrollHeight;
  }

  function fillHeld(all) {
    const key = all.map(ball => ball.id + ball.isModel).join();
    if (held.dataset.of === key) return;
    held.dataset.of = key;
    const model = all.find(ball => ball.isModel);
    if (model && !against) against = model.id;
    held.replaceChildren(part('option', {value: ''}, say('ball.against.none')),
        ...all.map(ball => part('option', {value: ball.id, selected: ball.id === against},
            say(ball.isModel ? 'ball.against.model' : 'ball.against.one', ball.number))));
  }

  return update;
}
