// From who is there to the last wear step.
import {say, sentence} from './words.js';
import {part, button, field, show} from './parts.js';
import {strapping} from './strapping.js';

export function who(root, lesson) {
  const form = part('form', {class: 'form', onsubmit: event => begin(event, lesson)});
  const list = part('select', {name: 'label', id: 'known'});
  const goal = part('select', {name: 'goal'});
  const fresh = part('fieldset', {id: 'fresh'},
      part('legend', {}, say('who.new')),
      field(say('who.name'), 'name', {autocomplete: 'off', maxlength: 60}),
      part('label', {class: 'field'}, part('span', {}, say('who.handed')),
          part('select', {name: 'handed'},
              part('option', {value: 'right'}, say('who.right')),
              part('option', {value: 'left'}, say('who.left')))),
      ...['width', 'depth', 'stature'].map(size =>
        field(say(`who.${size}`), size, {type: 'number', min: 50, max: 2500, inputmode: 'numeric'})),
      part('p', {class: 'small'}, say('who.sizes')));
  const agrees = part('select', {name: 'consent'}, ...['nobody', 'player', 'parent'].map(one =>
    part('option', {value: one}, say(`who.consent.${one}`))));
  const parent = field(say('who.parent'), 'parent', {maxlength: 60, autocomplete: 'off'});
  const consent = part('div', {class: 'form consent'},
      part('label', {class: 'field'}, part('span', {}, say('who.consent')), agrees), parent,
      part('p', {class: 'small'}, say('who.consent.why')));
  let players = [];
  const fit = () => {
    fresh.hidden = list.value !== '';
    consent.hidden = players.some(one => one.label === list.value && one.agreed);
    parent.hidden = agrees.value !== 'parent';
  };
  list.addEventListener('change', fit);
  agrees.addEventListener('change', fit);
  form.append(
      part('h1', {}, say('who.title')),
      part('label', {class: 'field'}, part('span', {}, say('who.who')), list),
      fresh,
      consent,
      part('label', {class: 'field'}, part('span', {}, say('who.goal')), goal),
      field(say('who.words'), 'words', {maxlength: 120, autocomplete: 'off'}),
      part('button', {class: 'first', type: 'submit'}, say('who.begin')));
  root.replaceChildren(form);
  let known = '';
  return state => {
    const now = JSON.stringify([state.players, state.goals]);
    if (now === known) return;
    known = now;
    players = state.players ?? [];
    list.replaceChildren(part('option', {value: ''}, say('who.add')), ...players.map(one =>
      part('option', {value: one.label, selected: one.label === state.asked}, one.name)));
    if (list.value === '' && state.asked) form.elements.name.value ||= state.asked;
    if (state.virtual) form.elements.handed.value = state.virtual;
    fit();
    goal.replaceChildren(part('option', {value: ''}, say('who.any')), ...state.goals.map(one =>
      part('option', {value: one.name}, say('who.aim', one.aim, one.shows))));
  };
}

async function begin(event, lesson) {
  event.preventDefault();
  const facts = Object.fromEntries(new FormData(event.target));
  await lesson.ask('begin', facts);
}

export function units(root, lesson) {
  const asks = part('p', {class: 'order', role: 'status'});
  const list = part('ul', {class: 'units'});
  const go = button(say('units.record'), () => lesson.ask('record'), {class: 'first'});
  root.replaceChildren(part('h1', {}, say('units.title')), asks, list,
      part('p', {class: 'small'}, say('units.hint')), go,
      button(say('units.anew'), () => lesson.ask('wear')));
  return state => {
    const {found, ask, ready} = state.units ?? {found: [], ready: false};
    show(asks, ask ? say('units.ask', ask) : say(ready ? 'units.ready' : 'units.wait'));
    go.disabled = !ready;
    go.classList.toggle('first', ready && !ask);
    list.replaceChildren(...found.map(unit => part('li', {},
        part('strong', {}, unit.name),
        part('span', {}, unit.worn || say('units.unknown')),
        part('span', {}, unit.hz > 0 ? say('units.hz', unit.hz) : unit.trouble),
        part('span', {class: 'small'}, say('units.moving')),
        part('meter', {min: 0, max: 10, value: unit.moving, 'aria-label': say('units.moving')}),
        part('span', {class: 'small place'}, unit.place))));
  };
}

export function table(root, lesson) {
  const is = part('p', {class: 'order', role: 'status'});
  const again = button('', () => lesson.ask('step', {word: 'table-rest', what: 'begin'}),
      {class: 'first', id: 'begin'});
  const on = button(say('table.on'), () => lesson.ask('go', {to: 'strap'}), {class: 'first', id: 'on'});
  root.replaceChildren(part('h1', {}, say('table.title')), part('p', {}, say('table.do')), is, again, on);
  return state => {
    const step = state.steps?.all[0] ?? {is: 'open'};
    show(is, standing(step, state.steps));
    show(again, say(step.is === 'open' ? 'step.begin' : 'step.again'));
    again.classList.toggle('first', !state.isTableDone);
    on.textContent = say(state.isTableDone ? 'table.on' : 'table.without');
    on.classList.toggle('first', state.isTableDone);
  };
}

function standing(step, all) {
  if (step.is === 'under_way') {
    return all.why ? say('step.why', all.why)
      : all.heldS > 0 ? say('step.held', all.heldS) : say('step.waiting');
  }
  return step.is === 'again' ? say('step.why', all.why) : say(`step.is.${step.is}`);
}

export function strap(root, lesson) {
  root.replaceChildren(part('h1', {}, say('strap.title')), strapping(lesson.state.handed),
      part('section', {class: 'care'}, part('h2', {}, say('care.title')),
          part('ul', {}, ...[1, 2, 3, 4, 5].map(n => part('li', {}, say(`care.${n}`))))),
      button(say('strap.on'), () => lesson.ask('go', {to: 'steps'}), {class: 'first', id: 'on'}));
  return () => {};
}

export function steps(root, lesson) {
  const title = part('h1', {});
  const what = part('p', {class: 'order'});
  const is = part('p', {class: 'order', role: 'status'});
  const list = part('ol', {class: 'steps'});
  let now = '';
  const act = does => () => lesson.ask('step', {word: now, what: does});
  const begin = button(say('step.begin'), act('begin'), {class: 'first', id: 'begin', 'data-key': 'b'});
  const end = button(say('step.done'), act('end'), {id: 'end', 'data-key': 'd'});
  const leave = button(say('step.leave'), act('leave'), {id: 'leave'});
  const on = button(say('steps.on'), () => lesson.ask('go', {to: 'balls'}), {class: 'first', id: 'on'});
  root.replaceChildren(title, what, is, part('p', {class: 'row'}, begin, end, leave, on), list);
  return state => {
    const {all, now: word} = state.steps ?? {all: [], now: 'done'};
    const step = all.find(one => one.word === word);
    now = word;
    show(title, step ? say(`step.${word}`) : say('steps.over'));
    show(what, step ? sentence(step.do) : say('steps.balls'));
    show(is, step ? standing(step, state.steps) : '');
    begin.firstChild.textContent = say(step?.is === 'open' ? 'step.begin' : 'step.again');
    begin.hidden = leave.hidden = !step;
    end.hidden = step?.is !== 'under_way';
    on.hidden = Boolean(step) && all.some(one => one.is === 'open' || one.is === 'under_way');
    on.classList.toggle('first', !step);
    const marks = JSON.stringify(all);
    if (list.dataset.of === marks) return;
    list.dataset.of = marks;
    list.replaceChildren(...all.map(one => part('li', {class: one.is},
        button(say(`step.${one.word}`), () => lesson.ask('step', {word: one.word, what: 'begin'}),
            {'aria-current': one.word === word ? 'step' : false}),
        part('span', {}, say(`step.is.${one.is}`)))));
  };
}
