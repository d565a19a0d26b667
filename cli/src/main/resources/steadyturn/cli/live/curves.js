// Turn, slide and wrist over time, one tap away; drawn by uPlot.
import uPlot from './uPlot.esm.js';
import {say} from './words.js';
import {part, button} from './parts.js';

const SHOWN = {'pelvis.turn': 1, 'pelvis.slide': 10, 'pelvis.thrust': 10, 'wrist.cock': 1}; // mm are shown as cm
const WIDE_PX = 800;

// Why a ball has nothing to draw of a measure.
export function whyNot(ball, id) {
  return ball.rows.find(row => row.id.startsWith(id) && !row.big.isThere)?.big.way ?? say('curves.unknown');
}

export function curves(ball, other) {
  const box = part('dialog', {class: 'curves', 'aria-label': say('curves.title', ball.number)});
  const close = button(say('curves.close'), () => box.close(), {class: 'first'});
  const room = part('div', {class: 'plots'});
  box.append(part('header', {}, part('h2', {}, say('curves.title', ball.number)), close),
      part('p', {class: 'small'}, say('curves.axis')), room);
  document.body.append(box);
  box.showModal();
  const size = () => {
    const across = room.clientWidth > WIDE_PX ? 2 : 1;
    return {
      width: Math.floor(room.clientWidth / across) - 8,
      height: Math.max(150, Math.min(260, (innerHeight - 250) / 2 - 40)),
    };
  };
  const plots = Object.keys(SHOWN).map(id => plot(id, ball, other, size(), room)).filter(Boolean);
  const fits = new ResizeObserver(() => plots.forEach(one => one.setSize(size())));
  fits.observe(room);
  close.focus();
  box.addEventListener('close', () => {
    fits.disconnect();
    box.remove();
  });
}

function plot(id, ball, other, size, room) {
  const mine = ball.path?.[id];
  const its = other?.path?.[id];
  const name = say(`curves.${id}`);
  const holder = part('div', mine ? {role: 'img', 'aria-label': say('curves.of', name)} : {});
  room.append(holder);
  if (!mine) {
    holder.append(part('p', {class: 'u-title'}, name), part('p', {}, whyNot(ball, id)));
    return undefined;
  }
  const per = values => values.map(v => v / SHOWN[id]);
  const data = its ? uPlot.join([[mine.t, per(mine.v)], [its.t, per(its.v)]])
    : [mine.t, per(mine.v), per(mine.v.map((v, i) => v - 2 * mine.sd[i])), per(mine.v.map((v, i) => v + 2 * mine.sd[i]))];
  const style = getComputedStyle(document.body);
  const ink = style.getPropertyValue('--ink');
  const grid = {stroke: ink, font: '20px sans-serif', grid: {stroke: style.getPropertyValue('--faint')}};
  const line = (label, colour, dash) => ({label, stroke: style.getPropertyValue(colour), width: 3, dash, spanGaps: true});
  const band = {stroke: style.getPropertyValue('--faint'), width: 1};
  return new uPlot({
    ...size, title: name, legend: {show: false}, cursor: {sync: {key: 'swing'}},
    scales: {x: {time: false}},
    axes: [{...grid, space: 80}, {...grid, size: 70}],
    series: [{}, line(name, '--back'), ...(its ? [line(say('curves.other'), '--quiet', [8, 6])] : [band, band])],
    bands: its ? [] : [{series: [3, 2], fill: style.getPropertyValue('--band')}],
    hooks: {draw: [drawn => marks(drawn, ball.path, ink)]},
  }, data, holder);
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
