// Measures the page of a rehearsed lesson in headless Chromium and prints JSON: from the finish being
// known to the figure on the screen, from movement to the command of the tone, frames a second of
// curves and trace beside an empty page, and which share of a core the program's threads take, by
// name. Usage: node measure-lesson.mjs ADDRESS BALLS PID UNITS
import {readFileSync, readdirSync} from 'node:fs';
import {chromium} from 'playwright-core';

const [address, balls, pid, units] = process.argv.slice(2);
const TICKS_A_SECOND = 100; // of /proc on Linux
const FRAMES_S = 5;
const REPS = 3;
const TURN_S = 6;
const POINTS = ['pelvis', 'lead_forearm', 'lead_hand', 'club_shaft', 'thorax']; // as units 1 to 5 are worn

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox'],
});
const context = await browser.newContext({viewport: {width: 1280, height: 800}});
const tab = await context.newPage();
tab.setDefaultTimeout(60000);

const spread = values => {
  const sorted = [...values].sort((a, b) => a - b);
  const at = part => Math.round(sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))]);
  return {count: sorted.length, median: at(0.5), p99: at(0.99), most: at(1)};
};

const frames = page => page.evaluate(seconds => new Promise(resolve => {
  let count = 0;
  const began = performance.now();
  const step = now => {
    count += 1;
    if (now - began < 1000 * seconds) requestAnimationFrame(step);
    else resolve(Math.round(10 * count / seconds) / 10);
  };
  requestAnimationFrame(step);
}), FRAMES_S);

// Processor seconds of each kind of thread so far.
function threads() {
  const seconds = {};
  for (const id of readdirSync(`/proc/${pid}/task`)) {
    const text = readFileSync(`/proc/${pid}/task/${id}/stat`, 'utf8');
    const name = text.slice(text.indexOf('(') + 1, text.lastIndexOf(')')).replace(/[\s\d/#-].*$/, '');
    const rest = text.slice(text.lastIndexOf(')') + 2).split(' ');
    seconds[name] = (seconds[name] ?? 0) + (Number(rest[11]) + Number(rest[12])) / TICKS_A_SECOND;
  }
  return seconds;
}

async function ask(what, facts = {}) {
  const why = await tab.evaluate(async ([name, told]) => {
    const answer = await fetch(`do/${name}`, {method: 'POST', headers: {'Content-Type': 'application/json'}, body: JSON.stringify(told)});
    return (await answer.json()).why;
  }, [what, facts]);
  if (why) throw new Error(`${what}: ${why}`);
}

const stage = name => tab.waitForSelector(`body[data-stage="${name}"]`);

async function toTheBalls() {
  await ask('begin', {name: 'Mika Lind', handed: 'right', width: 240, depth: 150, consent: 'player', goal: 'slides-away'});
  await stage('units');
  const count = Number(units);
  await tab.waitForFunction(n => document.querySelectorAll('.units li').length >= n, count);
  const places = await tab.locator('.units .place').allInnerTexts();
  for (const place of places.sort()) await ask('wear', {place, point: POINTS[places.indexOf(place)]});
  await tab.waitForFunction(() => document.querySelector('main button').disabled === false);
  await tab.waitForTimeout(2000);
  await ask('record');
  await stage('table');
  await ask('step', {word: 'table-rest', what: 'begin'});
  await tab.waitForFunction(() => /To the straps/.test(document.getElementById('on').textContent));
  await ask('go', {to: 'balls'});
  await stage('balls');
}

async function hit(selector, n) {
  await tab.waitForFunction(() => !document.getElementById('hit').disabled);
  await tab.click('#hit');
  await tab.waitForFunction(([s, count]) => document.querySelectorAll(s).length >= count, [selector, n]);
  await tab.waitForTimeout(1500);
}

// A repetition is not waited for: without wear steps none may be found, and the cue sounds all the same.
async function turn() {
  await tab.waitForFunction(() => !document.getElementById('hit').disabled);
  await tab.click('#hit');
  await tab.waitForTimeout(1000 * TURN_S);
}

const measured = {};
try {
  await tab.goto('about:blank');
  measured.framesOfAnEmptyPage = await frames(tab);
  await tab.goto(address);
  await toTheBalls();
  const [from, began] = [threads(), performance.now()];
  for (let n = 1; n <= Number(balls); n += 1) await hit('.strip li', n);
  const [to, seconds] = [threads(), (performance.now() - began) / 1000];
  measured.coreShare = Object.fromEntries(Object.entries(to)
    .map(([name, until]) => [name, Math.round(1000 * (until - (from[name] ?? 0)) / seconds) / 1000])
    .filter(([, share]) => share >= 0.002));
  measured.shownAfterMs = spread(await tab.evaluate(() => window.steadyturnShownAfterMs));
  await tab.click('#slow');
  measured.framesOfTheReplay = await frames(tab);
  await tab.click('#curves');
  measured.framesOfTheCurves = await frames(tab);
  await tab.keyboard.press('Escape');
  await tab.click('#to-drill');
  await stage('drill');
  await tab.click('#drill-begin');
  await tab.click('#sound');
  measured.framesOfTheTrace = await frames(tab);
  for (let n = 1; n <= REPS; n += 1) await turn();
  measured.cueAfterMs = spread(await tab.evaluate(() => window.steadyturnCueDelaysMs));
} finally {
  console.log(JSON.stringify(measured, null, 2)); // what there is, where a later step fails
  await browser.close();
}
