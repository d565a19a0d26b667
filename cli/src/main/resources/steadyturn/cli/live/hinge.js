// The hips from above: three bars and the pin they turn about, still or in replay. It draws what the
// program measured and computes nothing but places on the screen.
import {say} from './words.js';
import {drawn} from './parts.js';

const WIDTH = 560;
const HEIGHT = 400;
const MIDDLE = {x: 280, y: 170};
const PX_PER_MM = 1.05;
const FARTHEST_MM = 150;
const AFTER_S = 0.5;
const WORD = 170; // room that the word beside the pin takes

// Half the distance of the hips in mm, and on which side of the picture the target lies.
export function hinge(facts) {
  const svg = drawn('svg', {viewBox: `0 0 ${WIDTH} ${HEIGHT}`, class: 'hinge', role: 'img'});
  const still = drawn('g');
  const moving = drawn('g', {class: 'moving'});
  svg.append(still, moving);
  let shown;
  let frame = 0;

  const at = (along, across) =>
    [MIDDLE.x - facts.side * along * PX_PER_MM, MIDDLE.y - across * PX_PER_MM];

  function bar(pose, name) {
    const turn = pose.turn * Math.PI / 180;
    const reach = [facts.half * Math.cos(turn), facts.half * Math.sin(turn)];
    const [x1, y1] = at(pose.along - reach[0], pose.across + reach[1]);
    const [x2, y2] = at(pose.along + reach[0], pose.across - reach[1]);
    return drawn('line', {x1, y1, x2, y2, class: `bar ${name}`});
  }

  function word(text, x, y, anchor, name = '') {
    return drawn('text', {x, y, 'text-anchor': anchor, class: name}, text);
  }

  function path(swing, from, to, name) {
    const turn = swing['pelvis.turn'];
    const points = turn.t.map((t, i) => [t, i]).filter(([t]) => t >= from && t <= to)
        .map(([, i]) => at(swing['pelvis.slide'].v[i], swing['pelvis.thrust'].v[i])
            .map(value => value.toFixed(1)).join(','));
    return drawn('polyline', {points: points.join(' '), class: `path ${name}`});
  }

  function pin(swing, name) {
    if (!swing.pin) return [];
    const [along, across, half] = swing.pin;
    const far = Math.hypot(along, across);
    const part = Math.min(1, FARTHEST_MM / Math.max(1, far));
    const [x, y] = at(along * part, across * part);
    const [x0, y0] = at(0, 0);
    const parts = [drawn('line', {x1: x0, y1: y0, x2: x, y2: y, class: 'to-pin'}),
      drawn('circle', {cx: x, cy: y, r: 11, class: `pin ${name}`}),
      drawn('circle', {cx: x, cy: y, r: 4, class: 'pin-eye'})];
    if (name === 'mine') {
      const known = Math.min(60, half * PX_PER_MM);
      const isLeft = x + known + WORD > WIDTH;
      parts.unshift(drawn('ellipse', {cx: x, cy: y, rx: known, ry: known, class: 'known'}));
      parts.push(word(say('hinge.pin'), x + (isLeft ? -1 : 1) * (Math.max(11, known) + 8), y + 7,
          isLeft ? 'end' : 'start'));
    }
    return parts;
  }

  function names(swing) {
    const start = {turn: 0, along: 0, across: 0};
    const [x, y] = at(0, 0);
    const out = [drawn('line', {x1: x, y1: y - 84, x2: x, y2: y - 6, class: 'leader'}),
      word(say('hinge.start'), x, y - 90, 'middle', 'quiet')];
    for (const [key, side] of [['top', -1], ['impact', 1]]) {
      const pose = poseAt(swing, swing[key]) ?? start;
      const turn = pose.turn * Math.PI / 180;
      const [px, py] = at(pose.along + side * facts.half * Math.cos(turn),
          pose.across - side * facts.half * Math.sin(turn));
      out.push(word(say(`hinge.${key}`), px, py + (py > MIDDLE.y ? 34 : -18), 'middle'));
    }
    return out;
  }

  function frameOf() {
    const s = facts.side;
    const tip = MIDDLE.x - s * 270;
    const tail = MIDDLE.x - s * 200;
    return [drawn('line', {x1: tail, y1: 26, x2: tip, y2: 26, class: 'arrow'}),
      drawn('path', {d: `M ${tip} 26 l ${s * 16} -9 v 18 z`, class: 'arrow-tip'}),
      word(say('hinge.target'), tail + s * 12, 33, s > 0 ? 'start' : 'end'),
      drawn('line', {x1: 20, y1: HEIGHT - 18, x2: 20 + 100 * PX_PER_MM, y2: HEIGHT - 18, class: 'arrow'}),
      word(say('hinge.scale'), 28 + 100 * PX_PER_MM, HEIGHT - 11, 'start'),
      example('turns', s > 0 ? 395 : 60, {turn: -46, along: 0, across: 0}, {turn: 42, along: 30, across: 0}, [0, 0]),
      example('slides', s > 0 ? 500 : 165, {turn: -22, along: -62, across: 0}, {turn: 20, along: 110, across: 0}, [-31, -150])];
  }

  // Who turns and who slides, small, beside every picture: it needs no caption then.
  function example(name, x, top, impact, [along, across]) {
    const place = `translate(${x - MIDDLE.x * 0.27} ${-14}) scale(0.27)`;
    const [px, py] = at(along, across);
    return drawn('g', {transform: place, class: 'mini'}, bar({turn: 0, along: 0, across: 0}, 'start'),
        bar(top, 'back'), bar(impact, 'down'), drawn('circle', {cx: px, cy: py, r: 26, class: 'pin'}),
        word(say(`hinge.${name}`), MIDDLE.x, 440, 'middle'));
  }

  return {
    svg,
    draw(swing, other, text) {
      stop();
      shown = swing;
      svg.setAttribute('aria-label', text);
      moving.replaceChildren();
      still.replaceChildren(...frameOf());
      if (!swing) return;
      still.append(bar({turn: 0, along: 0, across: 0}, 'start'));
      if (other) {
        still.append(path(other, other.takeaway, other.impact, 'other'),
            bar(poseAt(other, other.top), 'other'), bar(poseAt(other, other.impact), 'other'),
            ...pin(other, 'other'));
      }
      still.append(path(swing, swing.takeaway, swing.top, 'back'),
          path(swing, swing.top, swing.impact, 'down'),
          bar(poseAt(swing, swing.top), 'back'), bar(poseAt(swing, swing.impact), 'down'),
          ...pin(swing, 'mine'), ...names(swing));
    },
    // Shows the swing once; a slow one takes four times as long.
    play(slowness, over) {
      if (!shown) return;
      stop();
      still.setAttribute('class', 'faint');
      const from = shown.takeaway - 0.2;
      const began = performance.now();
      const step = now => {
        const t = from + (now - began) / 1000 / slowness;
        const pose = poseAt(shown, Math.min(t, shown.impact + AFTER_S));
        moving.replaceChildren(path(shown, shown.takeaway, Math.min(t, shown.top), 'back'),
            ...(t > shown.top ? [path(shown, shown.top, t, 'down')] : []),
            bar(pose, t < shown.top ? 'back' : 'down'));
        if (t < shown.impact + AFTER_S) frame = requestAnimationFrame(step);
        else { stop(); over?.(); }
      };
      frame = requestAnimationFrame(step);
    },
  };

  function stop() {
    cancelAnimationFrame(frame);
    still.removeAttribute('class');
    moving.replaceChildren();
  }
}

// The measured pose nearest to an instant, s since impact.
function poseAt(swing, t) {
  const times = swing['pelvis.turn'].t;
  let i = 0;
  while (i < times.length - 1 && Math.abs(times[i + 1] - t) <= Math.abs(times[i] - t)) i += 1;
  return {
    turn: swing['pelvis.turn'].v[i],
    along: swing['pelvis.slide'].v[i],
    across: swing['pelvis.thrust'].v[i],
  };
}
