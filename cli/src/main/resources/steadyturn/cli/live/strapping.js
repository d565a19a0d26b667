// Where each unit sits and how: drawn, with what must not be.
import {say} from './words.js';
import {part, drawn} from './parts.js';

// A box with an arrow: the unit on a strap, its arrow the way its x axis points.
function unit(x, y, dx, dy) {
  const tip = [x + dx * 34, y + dy * 34];
  return [drawn('rect', {x: x - 13, y: y - 13, width: 26, height: 26, rx: 4, class: 'unit'}),
    drawn('line', {x1: x, y1: y, x2: tip[0], y2: tip[1], class: 'arrow'}),
    drawn('circle', {cx: tip[0], cy: tip[1], r: 4, class: 'arrow-tip'})];
}

const PICTURES = {
  // the back of the pelvis: two hip bones, the dimples, a belt
  pelvis: [drawn('path', {d: 'M30 60 Q110 20 190 60 Q180 130 110 150 Q40 130 30 60 Z', class: 'body'}),
    drawn('line', {x1: 26, y1: 82, x2: 194, y2: 82, class: 'strap'}),
    drawn('circle', {cx: 88, cy: 92, r: 4, class: 'dimple'}), drawn('circle', {cx: 132, cy: 92, r: 4, class: 'dimple'}),
    ...unit(110, 82, 0, -1)],
  // the lead forearm from the back of the hand, just above the wrist
  forearm: [drawn('path', {d: 'M10 62 L150 68 Q190 60 208 74 Q214 90 206 104 Q188 116 150 108 L10 118 Z', class: 'body'}),
    drawn('line', {x1: 118, y1: 60, x2: 118, y2: 116, class: 'strap'}), ...unit(118, 88, 1, 0)],
  // the back of the lead hand
  hand: [drawn('path', {d: 'M10 68 L80 70 Q120 56 150 62 L206 66 Q212 76 204 84 L210 96 Q204 108 192 108 L120 118 Q100 114 80 110 L10 112 Z', class: 'body'}),
    drawn('line', {x1: 122, y1: 58, x2: 122, y2: 118, class: 'strap'}), ...unit(122, 88, 1, 0)],
};

export function strapping() {
  return part('div', {class: 'strapping'}, ...Object.entries(PICTURES).map(([name, shapes]) =>
    part('figure', {}, drawn('svg', {viewBox: '0 0 220 170', role: 'img', 'aria-label': say(`strap.${name}.alt`)},
        ...shapes.map(shape => shape.cloneNode(true))),
    part('figcaption', {}, part('strong', {}, say(`strap.${name}`)), ' ', say(`strap.${name}.do`)))));
}
