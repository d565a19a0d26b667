// A drill: what to do, how many were found, the live turn as a trace and a tone, and each repetition's result.
import {say} from './words.js';
import {part, button, show, verdict as framed, withUnit} from './parts.js';

const TRACE_S = 8;
const LOWEST_HZ = 220;
const FULL_TURN_DEG = 45;
const LOUDNESS = 0.12;
const HIGHEST_DEG = 120;
const DEEPEST_DEG = -90;
const TEXT_PX = 20;

export function drill(root, lesson) {
  const pick = part('select', {'aria-label': say('drill.which')});
  const begin = button(say('drill.begin'), () => lesson.ask('drill', {name: pick.value}), {class: 'first', id: 'drill-begin'});
  const back = button(say('drill.back'), () => lesson.ask('go', {to: 'balls'}), {id: 'back'});
  const end = button(say('drill.end'), () => lesson.ask('drill', {name: ''}), {id: 'drill-end', 'data-key': 'e'});
  const sound = button(say('drill.sound'), () => turnSound(), {id: 'sound', 'data-key': 't', 'aria-pressed': 'false'});
  const title = part('h1', {});
  const text = part('section', {class: 'order'});
  const count = part('p', {class: 'main-number', id: 'reps'});
  const last = part('p', {class: 'main-way'});
  const verdict = part('p', {class: 'main-verdict'});
  const counts = part('p', {class: 'main-aim'});
  const live = part('p', {class: 'small'});
  const trace = part('canvas', {class: 'trace', role: 'img', 'aria-label': say('drill.live')});
  const reps = part('ol', {class: 'reps'});
  root.replaceChildren(title, part('p', {class: 'row'}, pick, begin, end, sound, back), text,
      part('div', {class: 'doing'}, part('div', {}, count, counts, part('div', {role: 'status'}, last, verdict)), part('div', {}, trace, live)), reps);
  const seen = [];
  const delays = [];
  let now = {};
  let tone;
  let frame = 0;
  window.steadyturnCueDelaysMs = delays; // for whoever measures

  function update(state) {
    now = state.drill;
    const chosen = now ?? state.drills?.find(one => one.name === pick.value) ?? state.drills?.[0];
    const names = JSON.stringify(state.drills?.map(one => one.name));
    if (pick.dataset.of !== names) {
      pick.dataset.of = names;
      pick.replaceChildren(...(state.drills ?? []).map(one => part('option', {value: one.name}, one.title)));
    }
    pick.hidden = begin.hidden = back.hidden = Boolean(now);
    end.hidden = sound.hidden = !now;
    root.classList.toggle('idle', !now);
    show(title, chosen?.title ?? '');
    const words = JSON.stringify([chosen?.name, Boolean(now)]);
    if (chosen && text.dataset.of !== words) {
      text.dataset.of = words;
      text.replaceChildren(part('p', {}, now ? chosen.feel : chosen.do),
          part('p', {class: 'small'}, [say('drill.judged', chosen.shows), chosen.goal].filter(Boolean).join(' \u00b7 ')),
          now ? '' : part('section', {class: 'care'}, part('h2', {}, say('drill.care')),
              part('ul', {}, ...chosen.cautions.map(one => part('li', {}, one)))));
    }
    show(live, chosen?.shows && !chosen.isOfTurn ? say('drill.live.other', chosen.shows) : say('drill.live'));
    if (!now) silence();
    if (now) results(now);
  }

  function results(its) {
    const so = verdict => its.reps.filter(rep => rep.verdict === verdict).length;
    count.replaceChildren(String(so('inside')), part('span', {class: 'unit'}, say('drill.in')));
    show(counts, say('drill.of', its.reps.length, its.wanted, so('outside'), so('cannot-be-told')));
    const newest = its.reps.at(-1);
    show(last, newest ? say('drill.last', its.reps.length, `${withUnit(newest.big)} ${newest.big.half} ${newest.big.way}`) : say('drill.wait'));
    verdict.replaceChildren(...framed(newest));
    const key = JSON.stringify(its.reps);
    if (reps.dataset.of === key) return;
    reps.dataset.of = key;
    reps.replaceChildren(...its.reps.map(rep => part('li', {},
        `${withUnit(rep.big)} ${rep.big.half} `, ...framed(rep, true))));
  }

  // The choice changes what is read before the drill is begun.
  pick.addEventListener('change', () => update(lesson.state));

  update.cue = ({turn, at}) => {
    if (turn === null || !now) return;
    delays.push(Date.now() - at);
    if (delays.length > 2000) delays.shift();
    seen.push([at, turn]);
    while (seen.length > 0 && at - seen[0][0] > TRACE_S * 1000) seen.shift();
    follow(turn);
    if (frame === 0) frame = requestAnimationFrame(draw);
  };

  function isIn(turn) {
    return now?.low !== undefined && turn >= now.low && turn <= now.high;
  }

  function draw() {
    frame = 0;
    const ctx = trace.getContext('2d');
    const style = getComputedStyle(document.body);
    const colour = name => style.getPropertyValue(name);
    const [width, height] = [trace.clientWidth, trace.clientHeight];
    trace.width = width * devicePixelRatio;
    trace.height = height * devicePixelRatio;
    ctx.scale(devicePixelRatio, devicePixelRatio);
    const y = turn => height * (HIGHEST_DEG - turn) / (HIGHEST_DEG - DEEPEST_DEG);
    if (now?.low !== undefined) {
      ctx.fillStyle = colour('--band');
      ctx.fillRect(0, y(now.high), width, y(now.low) - y(now.high));
      ctx.strokeStyle = colour('--ink');
      ctx.setLineDash([6, 6]);
      ctx.strokeRect(0, y(now.high), width, y(now.low) - y(now.high));
      ctx.setLineDash([]);
    }
    ctx.fillStyle = colour('--quiet');
    ctx.font = `${TEXT_PX}px "Atkinson Hyperlegible Next", sans-serif`;
    for (const turn of [DEEPEST_DEG / 2, 0, HIGHEST_DEG / 2]) {
      ctx.fillRect(0, y(turn), width, turn === 0 ? 2 : 1);
      ctx.fillText(turn === 0 ? say('drill.zero') : `${Math.abs(turn)}\u00b0 ${say(turn < 0 ? 'drill.away' : 'drill.towards')}`, 8, y(turn) - 7);
    }
    ctx.strokeStyle = colour('--back');
    ctx.lineWidth = 3;
    ctx.beginPath();
    const end = seen.at(-1)?.[0] ?? 0;
    seen.forEach(([at, turn], i) => {
      const x = width - (end - at) / 1000 / TRACE_S * width;
      if (i === 0) ctx.moveTo(x, y(turn));
      else ctx.lineTo(x, y(turn));
    });
    ctx.stroke();
  }

  // The tone rises with the turn back; in the band a second one joins it.
  function follow(turn) {
    if (!tone) return;
    const high = LOWEST_HZ * 2 ** (Math.max(-0.5, Math.min(2, -turn / FULL_TURN_DEG)));
    const when = tone.audio.currentTime;
    tone.low.frequency.setTargetAtTime(high, when, 0.01);
    tone.high.frequency.setTargetAtTime(high * 1.5, when, 0.01);
    tone.joins.gain.setTargetAtTime(isIn(turn) ? LOUDNESS : 0, when, 0.02);
  }

  function turnSound() {
    if (tone) {
      silence();
      return;
    }
    const audio = new AudioContext();
    const [low, high] = [audio.createOscillator(), audio.createOscillator()];
    const [quiet, joins] = [audio.createGain(), audio.createGain()];
    quiet.gain.value = LOUDNESS;
    joins.gain.value = 0;
    low.connect(quiet).connect(audio.destination);
    high.connect(joins).connect(audio.destination);
    low.start();
    high.start();
    tone = {audio, low, high, joins};
    sound.setAttribute('aria-pressed', 'true');
  }

  function silence() {
    tone?.audio.close();
    tone = undefined;
    sound.setAttribute('aria-pressed', 'false');
  }

  return update;
}
