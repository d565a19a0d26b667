// Turn, slide and wrist over time, one tap away; drawn by uPlot.
import uPlot from './uPlot.esm.js';
import {say} from './words.js';
import {part, button} from './parts.js';

const SHOWN = ['pelvis.turn', 'pelvis.slide', 'pelvis.thrust', 'wrist.cock'];

export function curves(ball, other) {
  const box = part('dialog', {class: 'curves', 'aria-label': say('curves.title', ball.number)});
  const close = button(say('curves.close'), () => box.close(), {class: 'first'});
  box.append(part('header', {}, part('h2', {}, say('curves.title', ball.number)), close),
      part('p', {class: 'small'}, say('curves.axis')));
  document.body.append(box);
  box.showModal();
  const style = getComputedStyle(document.body);
  const ink = style.getPropertyValue('--ink');
  const room = part('div', {class: 'plots'});
  box.append(room);
  const across = box.clientWidth > 800 ? 2 : 1;
  const width = Math.floor((box.clientWidth - 48) / across);
  const height = Math.max(150, Math.min(260, (innerHeight - 250) / 2 - 40));
  for (const id of SHOWN) {
    const mine = ball.path?.[id];
    if (!mine) continue;
    const its = other?.path?.[id];
    const name = say(`curves.${id}`);
    const holder = part('div', {role: 'img', 'aria-label': say('curves.of', name)});
    room.append(holder);
    const data = its ? uPlot.join([[mine.t, mine.v], [its.t, its.v]])
      : [mine.t, mine.v, mine.v.map((v, i) => v - 2 * mine.sd[i]), mine.v.map((v, i) => v + 2 * mine.sd[i])];
    const grid = {stroke: ink, font: '18px sans-serif', grid: {stroke: style.getPropertyValue('--faint')}};
    const line = (label, colour, dash) => ({label, stroke: style.getPropertyValue(colour), width: 3, dash, spanGaps: true});
    const band = {stroke: style.getPropertyValue('--faint'), width: 1};
    new uPlot({
      width, height, title: name, legend: {show: false}, cursor: {sync: {key: 'swing'}},
      scales: {x: {time: false}},
      axes: [grid, {...grid, size: 70}],
      series: [{}, line(name, '--back'), ...(its ? [line(say('curves.other'), '--quiet', [8, 6])] : [band, band])],
      bands: its ? [] : [{series: [3, 2], fill: style.getPropertyValue('--band')}],
      hooks: {draw: [plot => marks(plot, ball.path, ink)]},
    }, data, holder);
  }
  close.focus();
  box.addEventListener('close', () => box.remove());
}

// The key positions as upright lines.
function marks(plot, path, ink) {
  const {ctx, bbox} = plot;
  ctx.save();
  ctx.strokeStyle = ink;
  ctx.setLineDash([2, 4]);
  for (const key of ['takeaway', 'top', 'impact']) {
    const x = plot.valToPos(path[key], 'x', true);
    ctx.beginPath();
    ctx.moveTo(x, bbox.top);
    ctx.lineTo(x, bbox.top + bbox.height);
    ctx.stroke();
  }
  ctx.restore();
}
