// The page of a lesson: one view for each stage, made when the stage is entered, told of every change.
import {readWords, say} from './words.js';
import {part, button, show} from './parts.js';
import {listen, ask} from './link.js';
import {who, units, table, strap, steps} from './steps.js';
import {balls} from './ball.js';
import {drill} from './drill.js';
import {closing} from './closing.js';

const VIEWS = {who, units, table, strap, steps, balls, drill, closing};
const COURSE = ['who', 'units', 'table', 'strap', 'steps', 'balls', 'closing'];
const at = id => document.getElementById(id);

const lesson = {
  state: {},
  balls: new Map(),
  fresh: '',
  speak: text => show(at('spoken'), text),
  ask: async (what, facts) => {
    const why = await ask(what, facts);
    if (why) tell(why === 'gone' ? say('link.gone') : why);
    return why;
  },
};
const shownAfterMs = window.steadyturnShownAfterMs = [];
let view;
let stage = '';
let told = '';

function tell(why) {
  told = why;
  troubles();
}

function troubles() {
  const lines = [...(lesson.state.troubles ?? []), ...(told ? [told] : []),
    ...(lesson.state.noticed ?? [])];
  const box = at('trouble');
  const text = lines.join('\n');
  if (box.dataset.text === text) return;
  box.dataset.text = text;
  box.replaceChildren(...lines.map(line => part('p', {}, line)));
  if (lines.length > 0) {
    box.append(button(say('read'), () => {
      told = '';
      ask('read');
      troubles();
    }));
  }
}

function takeState(state) {
  lesson.state = state;
  show(at('who'), state.player ? say('who.line', state.player, state.words || aim(state)) : '');
  course(state.stage);
  if (state.stage !== stage) {
    stage = state.stage;
    told = '';
    document.body.dataset.stage = stage;
    view = VIEWS[stage](at('stage'), lesson);
    if (document.hasFocus()) at('stage').focus();
  }
  view(state);
  troubles();
  rehearsal(state);
}

function aim(state) {
  return state.goals?.find(goal => goal.name === state.goal)?.aim ?? '';
}

function course(now) {
  const here = COURSE.indexOf(now === 'drill' ? 'balls' : now);
  at('course').replaceChildren(...COURSE.map((name, i) =>
    part('li', i === here ? {'aria-current': 'step'} : {class: i < here ? 'over' : 'ahead'},
        say(`stage.${name}`))));
}

// What the virtual player is asked to do; only in a rehearsal.
function rehearsal(state) {
  const box = at('rehearsal');
  box.hidden = !state.isRehearsed;
  if (box.hidden) return;
  const does = {
    units: [0, 1, 2].map(unit => ['move', {unit}]),
    steps: [['restless', {}]],
    balls: [['hit', {}], ['pull', {}], ['slip', {}]],
    drill: [['hit', {}]],
  }[state.stage] ?? [];
  const key = state.stage;
  if (box.dataset.of !== key) {
    box.dataset.of = key;
    box.replaceChildren(part('p', {}, say('rehearsal')), ...does.map(([what, facts]) =>
      button(say(`rehearsal.${what}`, (facts.unit ?? 0) + 1),
          () => lesson.ask('rehearse', {what, ...facts}),
          what === 'hit' ? {'data-key': 'h', id: 'hit'} : {})));
  }
}

function takeBalls({all}) {
  lesson.balls = new Map(all.map(ball => [ball.id, ball]));
  view?.(lesson.state);
}

function takeBall(ball) {
  const isNew = !lesson.balls.has(ball.id);
  lesson.balls.set(ball.id, ball);
  if (isNew) {
    lesson.fresh = ball.id;
    const row = ball.rows[0];
    const big = row?.big;
    if (big) lesson.speak(say('spoken', ball.number, row.name, big.number + big.unit, big.way, row.verdict ? say(`goal.${row.verdict}`) : ''));
  }
  view?.(lesson.state);
  // for whoever measures: from the finish being known to the figure on the screen
  if (ball.knownAt) requestAnimationFrame(() => shownAfterMs.push(Date.now() - ball.knownAt));
}

// One key does what the button with it does; not while something is typed.
document.addEventListener('keydown', event => {
  const isTyping = event.target.closest('input, textarea, select, dialog');
  if (event.ctrlKey || event.metaKey || event.altKey || isTyping) return;
  const found = document.querySelector(`[data-key="${CSS.escape(event.key.toLowerCase())}"]`);
  if (found && !found.disabled && found.offsetParent) {
    event.preventDefault();
    found.click();
  }
});

await readWords();
listen({
  state: takeState,
  balls: takeBalls,
  ball: takeBall,
  cue: cue => view?.cue?.(cue),
}, is => {
  show(at('link'), is === 'there' ? '' : say(`link.${is}`));
  document.body.dataset.link = is;
});
