// Small builders of the page's parts. Nothing here writes markup as text.
import {say} from './words.js';

const SVG = 'http://www.w3.org/2000/svg';

function filled(node, facts, children) {
  for (const [name, value] of Object.entries(facts)) {
    if (name.startsWith('on')) node.addEventListener(name.slice(2), value);
    else if (value === true) node.setAttribute(name, '');
    else if (value !== false && value !== undefined) node.setAttribute(name, value);
  }
  node.append(...children.flat().filter(child => child !== undefined && child !== ''));
  return node;
}

export function part(name, facts = {}, ...children) {
  return filled(document.createElement(name), facts, children);
}

export function drawn(name, facts = {}, ...children) {
  return filled(document.createElementNS(SVG, name), facts, children);
}

// A button; its key, where it has one, stands behind its word.
export function button(word, does, facts = {}) {
  const key = facts['data-key'];
  return part('button', {type: 'button', ...facts, onclick: does}, word,
      key ? part('kbd', {'aria-hidden': 'true'}, key.toUpperCase()) : '');
}

// A value with its unit as a person writes it: 23°, 6 cm, 2.8.
export function withUnit({number, unit, isThere}) {
  return number + (!isThere || !unit ? '' : unit === '\u00b0' ? unit : ` ${unit}`);
}

// What a value was when it was first shown.
export function was({was: before, isChanged}) {
  if (before === '\u2013') return say('ball.was.none');
  return before || isChanged ? say(isChanged ? 'ball.changed' : 'ball.was', before) : '';
}

// Whether a value is inside its goal, as a word in a frame, and what it leans to where that cannot be told.
export function verdict(row, isShort) {
  if (!row?.verdict) return [];
  return [part('span', {class: 'verdict', 'data-is': row.verdict}, say(`goal.${isShort ? 'short.' : ''}${row.verdict}`)),
    row.lean ? part('span', {class: 'lean'}, say(`goal.lean.${row.lean}`)) : ''].filter(Boolean);
}

export function field(label, name, facts = {}) {
  return part('label', {class: 'field'}, part('span', {}, label), part('input', {name, ...facts}));
}

// Replaces what a part holds, only where it differs from what it shows.
export function show(node, text) {
  if (node.textContent !== text) node.textContent = text;
}
