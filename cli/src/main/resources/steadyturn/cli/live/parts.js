// Small builders of the page's parts. Nothing here writes markup as text.
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

export function field(label, name, facts = {}) {
  return part('label', {class: 'field'}, part('span', {}, label), part('input', {name, ...facts}));
}

// Replaces what a part holds, only where it differs from what it shows.
export function show(node, text) {
  if (node.textContent !== text) node.textContent = text;
}
