// Where each unit sits and how: drawn, with what must not be.
import {say} from './words.js';
import {part, drawn} from './parts.js';

const shape = (name, d) => drawn('path', {d, class: name});
const bar = (x, y, width, height, turn = 0) => drawn('rect',
    {x, y, width, height, rx: height / 2, class: 'body', transform: `rotate(${turn} ${x} ${y})`});

// A box with an arrow: the unit, its arrow the way its x axis points.
function unit(x, y, dx, dy) {
  const at = (along, across) => `${x + dx * along - dy * across} ${y + dy * along + dx * across}`;
  return [drawn('rect', {x: x - 13, y: y - 13, width: 26, height: 26, rx: 4, class: 'unit'}),
    shape('arrow', `M${at(13, 0)} L${at(38, 0)}`),
    shape('arrow-tip', `M${at(50, 0)} L${at(34, 9)} L${at(34, -9)} Z`)];
}

// A word with a line to what it names.
function named(name, x, y, toX, toY) {
  return [shape('leader', `M${x} ${y + (toY > y ? 5 : -16)} L${toX} ${toY}`),
    drawn('text', {x, y, 'text-anchor': 'middle'}, say(`strap.${name}.word`))];
}

// The back of a hand whose wrist is at a place; fingers and thumb to the right.
const hand = (x, y, s) => [0, 1, 2, 3].map(i => bar(x + 40 * s, y + (i * 12 - 24) * s, (i === 0 || i === 3 ? 36 : 44) * s, 11 * s))
    .concat(bar(x + 12 * s, y - 20 * s, 40 * s, 12 * s, -32),
        shape('body', `M${x} ${y - 15 * s} Q${x + 20 * s} ${y - 27 * s} ${x + 48 * s} ${y - 24 * s} L${x + 48 * s} ${y + 24 * s} Q${x + 20 * s} ${y + 26 * s} ${x} ${y + 15 * s} Z`));

// Its back in sight and fingers to the right, the left hand has its thumb below: the lead one of a right-hander.
const lead = (side, ...shapes) =>
  drawn('g', {transform: side === 'left' ? '' : 'translate(0 180) scale(1 -1)'}, ...shapes);

const PICTURES = {
  // the lower back: waist and hips, the spine, two dimples, a belt
  pelvis: () => [shape('body', 'M66 4 Q74 42 54 72 Q34 104 32 166 L188 166 Q186 104 166 72 Q146 42 154 4 Z'),
    shape('crease', 'M110 130 L110 166'), shape('spine', 'M110 4 L110 62'),
    shape('strap', 'M46 90 Q110 102 174 90'),
    ...[84, 136].map(cx => drawn('circle', {cx, cy: 108, r: 4, class: 'dimple'})),
    ...unit(110, 96, 0, -1), ...named('pelvis', 196, 18, 116, 34)],
  forearm: side => [lead(side, ...hand(134, 90, 0.95)), shape('body', 'M4 62 Q70 56 136 75 L136 105 Q70 124 4 118 Z'),
    shape('strap', 'M92 62 L92 118'), ...unit(92, 90, 1, 0), ...named('forearm', 136, 154, 136, 108)],
  hand: side => [shape('body', 'M4 58 L62 62 L62 118 L4 122 Z'), drawn('g', {class: 'glove'}, lead(side, ...hand(58, 90, 1.75))),
    shape('crease', 'M62 62 L62 118'), ...unit(104, 90, 1, 0), ...named('hand', 40, 164, 70, 116)],
};

export function strapping(side) {
  return part('div', {class: 'strapping'}, ...Object.entries(PICTURES).map(([name, shapes]) =>
    part('figure', {}, drawn('svg', {viewBox: '0 0 220 170', role: 'img', 'aria-label': say(`strap.${name}.alt`)}, ...shapes(side)),
        part('figcaption', {}, part('strong', {}, say(`strap.${name}`)), ' ', say(`strap.${name}.do`)))));
}
