// Walks a rehearsed lesson in headless Chromium as a teacher would, and prints as JSON what was seen:
// console errors, requests that leave the machine, violations of axe-core, sizes, and every ball's
// figures. The second part goes on after the program was started anew. Usage:
// node walk-lesson.mjs ADDRESS BALLS first|second [FOLDER]; with a folder, pictures go there.
import {readFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import {chromium} from 'playwright-core';
import {siege} from './siege.mjs';

const [address, balls, half, folder] = process.argv.slice(2);
const isShort = Number(balls) < 2; // one ball, the wear step that is done wrong first, no drill
const origin = new URL(address).origin;
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const seen = {errors: [], requests: [], violations: [], said: [], figures: [], mainHeight: 0, smallest: 99, times: {}};
const began = performance.now();
const SCREENS = {laptop: [1280, 800], tablet: [820, 1180], phone: [390, 844]};

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox'],
});
const context = await browser.newContext({viewport: {width: 1280, height: 800}, bypassCSP: false});
const tab = await context.newPage();
tab.setDefaultTimeout(40000);
tab.on('console', m => m.type() === 'error' && seen.errors.push(m.text()));
tab.on('pageerror', e => seen.errors.push(String(e)));
tab.on('request', r => !r.url().startsWith(origin) && !r.url().startsWith('data:') && seen.requests.push(r.url()));

// Contrast of every figure with what lies behind it, by the formula of WCAG 2.2; smallest of all.
const FIGURES = '.main-number, .main-number span, .figures b, .figures .half, .strip li, .strip button, .reps li, td';
const contrast = selector => {
  const rgb = text => text.match(/[\d.]+/g).map(Number);
  const light = ([r, g, b]) => [r, g, b].map(v => v / 255)
    .map(v => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)
    .reduce((sum, v, i) => sum + v * [0.2126, 0.7152, 0.0722][i], 0);
  const behind = node => {
    const colour = getComputedStyle(node).backgroundColor;
    return rgb(colour)[3] === 0 && node.parentElement ? behind(node.parentElement) : rgb(colour);
  };
  const found = [...document.querySelectorAll(selector)].filter(node => node.offsetParent && node.textContent);
  return Math.min(...found.map(node => {
    const [one, other] = [light(rgb(getComputedStyle(node).color)), light(behind(node))];
    return (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
  }));
};

async function barriers(name) {
  const client = await context.newCDPSession(tab);
  const {result} = await client.send('Runtime.evaluate', {
    expression: `(() => { ${axe}; return axe.run().then(r => r.violations.map(v => v.id + ': ' + v.nodes.map(n => n.html.slice(0, 120)).join(' | '))); })()`,
    awaitPromise: true, returnByValue: true,
  });
  seen.violations.push(...(result.value ?? ['axe did not run']).map(v => `${name}: ${v}`));
  const ratio = await tab.evaluate(contrast, FIGURES);
  if (ratio < 7) seen.violations.push(`${name}: figures have a contrast of ${ratio.toFixed(1)}, 7 asked`);
}

// What stands at the bottom of a laptop's screen is on it, and nothing is wider than the screen.
async function fits(name, screen, width, height) {
  const is = await tab.evaluate(() => ({
    wide: document.documentElement.scrollWidth, low: document.documentElement.scrollHeight,
  }));
  if (is.wide > width + 1) seen.errors.push(`${name} on ${screen}: ${is.wide} px wide`);
  if (screen === 'laptop' && is.low > height + 1) seen.errors.push(`${name} on ${screen}: ${is.low} px high`);
}

const SHORT = ['who', 'step-again', 'ball', 'closing'];

async function look(name) {
  seen.times[name] = Math.round((performance.now() - began) / 100) / 10;
  await fits(name, 'laptop', 1280, 800);
  if (folder) await pictures(name);
  if (!isShort || SHORT.includes(name)) await barriers(name);
}

async function pictures(name) {
  for (const [screen, [width, height]] of Object.entries(SCREENS)) {
    await tab.setViewportSize({width, height});
    await tab.waitForTimeout(150);
    await tab.screenshot({path: `${folder}/${name}-${screen}.png`, fullPage: screen !== 'laptop'});
    await fits(name, screen, width, height);
  }
  await tab.setViewportSize({width: 1280, height: 800});
  await tab.emulateMedia({colorScheme: 'dark'});
  await barriers(`${name}, dark`);
  await tab.screenshot({path: `${folder}/${name}-dark.png`});
  await tab.emulateMedia({colorScheme: 'light'});
}

const stage = name => tab.waitForSelector(`body[data-stage="${name}"]`);

async function step(name, isWrong) {
  await tab.waitForFunction(t => document.querySelector('h1').textContent === t, name);
  if (isWrong) await tab.getByRole('button', {name: 'Player does not keep still'}).click();
  await tab.click('#begin');
  if (isWrong) {
    await tab.waitForTimeout(800);
    await tab.click('#end');
    await tab.waitForFunction(() => document.body.innerText.includes('Again:'));
    seen.said.push(await tab.locator('main [role=status]').innerText());
    await look('step-again');
    await tab.click('#begin');
  }
  await tab.waitForFunction(t => document.querySelector('h1').textContent !== t, name, {timeout: 30000});
}

async function ball(n) {
  await tab.waitForFunction(() => !document.getElementById('hit').disabled);
  await tab.click('#hit');
  await tab.waitForFunction(count => document.querySelectorAll('.strip li').length >= count, n, {timeout: 60000});
}

async function first() {
  await tab.goto(address);
  await stage('who');
  await look('who');
  await tab.fill('[name=name]', 'Mika Lind');
  await tab.fill('[name=width]', '240');
  await tab.fill('[name=depth]', '150');
  await tab.getByRole('button', {name: 'To the units'}).click();
  await tab.waitForFunction(() => document.getElementById('trouble').innerText.includes('Ask first'));
  await tab.selectOption('[name=consent]', 'parent');
  await tab.fill('[name=parent]', 'Ida Lind');
  await tab.selectOption('[name=goal]', 'slides-away');
  await tab.fill('[name=words]', 'turn, and stay over the spot');
  await tab.getByRole('button', {name: 'To the units'}).click();
  await stage('units');
  for (const unit of [1, 2, 3]) {
    const asked = tab.locator('.order');
    await tab.waitForFunction(() => /Move the unit/.test(document.querySelector('.order').textContent));
    const was = await asked.innerText();
    await tab.getByRole('button', {name: `Move unit ${unit}`}).click();
    await tab.waitForFunction(t => document.querySelector('.order').textContent !== t, was);
    if (unit === 1) await look('units');
  }
  await tab.getByRole('button', {name: 'Record with these units'}).click();
  await stage('table');
  if (!isShort) await tab.waitForTimeout(1500);
  await tab.click('#begin');
  await tab.waitForFunction(() => /To the straps/.test(document.getElementById('on').textContent));
  await look('table');
  await tab.click('#on');
  await stage('strap');
  await look('strap');
  await tab.click('#on');
  await stage('steps');
  const names = ['Aim', 'Quiet stance', 'Bend forward from the hips', 'Straight wrist', 'Cock the wrist', 'Turn on the spot'];
  for (const name of names) {
    if (!isShort || name === 'Quiet stance') {
      await step(name, name === 'Quiet stance');
    } else {
      await tab.waitForFunction(t => document.querySelector('h1').textContent === t, name);
      await tab.click('#leave');
    }
  }
  await look('steps');
  await tab.click('#on');
  await stage('balls');
  await look('balls-before');
  for (let n = 1; n <= Number(balls); n += 1) {
    const cookies = await context.cookies();
    const besieged = n === 1 ? siege(origin, cookies.map(c => `${c.name}=${c.value}`).join('; ')) : [];
    await ball(n);
    seen.errors.push(...(await besieged).map(what => `not refused: ${what}`));
    if (n === 1) {
      const sizes = await tab.evaluate(() => ({
        main: document.getElementById('main').getBoundingClientRect().height,
        type: parseFloat(getComputedStyle(document.getElementById('main')).fontSize),
        smallest: Math.min(...[...document.querySelectorAll('.answer *, .strip *')].filter(e => e.childElementCount === 0 && e.textContent && e.tagName !== 'KBD').map(e => parseFloat(getComputedStyle(e).fontSize))),
      }));
      seen.mainHeight = Math.min(sizes.main, sizes.type * 0.72);
      seen.smallest = sizes.smallest;
    }
  }
  await look('ball');
  await tab.click('#discard');
  await tab.waitForFunction(() => document.querySelector('.strip .out'));
  await tab.keyboard.press('n');
  await tab.keyboard.type('left heel stayed down');
  await tab.keyboard.press('Enter');
  await tab.waitForFunction(() => document.querySelector('.main-name').textContent.includes('left heel'));
  if (isShort) {
    await tab.waitForTimeout(700); // four times a second notes go to the disk
    return;
  }
  await tab.getByRole('button', {name: 'Pull a cable'}).click();
  await tab.waitForFunction(() => document.getElementById('trouble').innerText.includes('pelvis unit is not heard'));
  seen.said.push(await tab.locator('#trouble p').first().innerText());
  await look('unplugged');
  await tab.waitForFunction(() => !document.getElementById('trouble').innerText.includes('is not heard'), null, {timeout: 20000});
  await tab.click('#to-drill');
  await stage('drill');
  await tab.locator('select').first().selectOption('step-to-target');
  await look('drill-chosen');
  await tab.click('#drill-begin');
  await tab.click('#sound');
  for (const rep of [1, 2]) {
    await tab.waitForFunction(() => !document.getElementById('hit').disabled);
    await tab.click('#hit');
    await tab.waitForFunction(n => document.querySelectorAll('.reps li').length >= n, rep, {timeout: 60000});
  }
  seen.cueMs = await tab.evaluate(() => {
    const sorted = [...window.steadyturnCueDelaysMs].sort((a, b) => a - b);
    return {count: sorted.length, median: sorted[Math.floor(sorted.length / 2)], p99: sorted[Math.floor(sorted.length * 0.99)]};
  });
  await look('drill');
  await tab.click('#drill-end');
  await tab.click('#back');
  await stage('balls');
  await ball(Number(balls) + 3);
  await tab.waitForFunction(() => document.querySelector('.difference').childElementCount > 1);
  seen.said.push(await tab.locator('.difference').innerText());
  await look('after-drill');
}

// The program was ended, or killed, and started anew: what was struck and said is there.
async function second() {
  const struck = Number(balls) + (isShort ? 0 : 3);
  await tab.goto(address);
  await stage('balls');
  await tab.waitForFunction(count => document.querySelectorAll('.strip li').length >= count, struck);
  await tab.locator('.strip button').nth(Number(balls) - 1).click();
  await tab.waitForFunction(() => document.querySelector('.strip .out') && document.querySelector('.main-name').textContent.includes('left heel'));
  await ball(struck + 1);
  await tab.reload();
  await tab.waitForFunction(count => document.querySelectorAll('.strip li').length >= count, struck + 1);
  await tab.click('#discard');
  await tab.waitForFunction(() => document.querySelectorAll('.strip .out').length === 2);
  await tab.keyboard.press('u');
  await tab.waitForFunction(() => document.querySelectorAll('.strip .out').length === 1);
  await tab.click('#curves');
  await tab.waitForSelector('.curves canvas');
  await look('curves');
  await tab.keyboard.press('Escape');
  if (!isShort) await slips(struck + 2);
  await tab.click('#finish');
  await tab.waitForSelector('.numbers table', {timeout: 90000});
  await look('closing');
  seen.figures = await tab.evaluate(() => [...document.querySelectorAll('.numbers tbody tr')].map(row => [...row.querySelectorAll('td')].map(cell => ({id: cell.dataset.id, text: cell.textContent}))));
  seen.said.push(await tab.locator('main section').first().innerText());
  const [home] = await Promise.all([context.waitForEvent('page'), tab.getByRole('link', {name: 'Page for the player'}).click()]);
  await home.waitForLoadState();
  seen.said.push(await home.title());
  await home.close();
  await tab.click('#another');
  await stage('who');
  await tab.selectOption('#known', {label: 'Mika Lind'});
  if (await tab.locator('[name=consent]').isVisible()) seen.errors.push('consent asked twice');
}

async function slips(struck) {
  await tab.getByRole('button', {name: 'The pelvis unit slips'}).click();
  await ball(struck);
  await tab.waitForFunction(() => document.getElementById('trouble').innerText.includes('slipped after ball'), null, {timeout: 60000});
  seen.said.push(await tab.locator('#trouble').innerText());
  await look('slipped');
}

try {
  await (half === 'second' ? second() : first());
} catch (e) {
  seen.errors.push(`${e}\n${await tab.evaluate(() => document.body.innerText).catch(() => '')}`);
  if (folder) await tab.screenshot({path: `${folder}/failed.png`});
} finally {
  await browser.close();
}
console.log(JSON.stringify(seen, null, 2));
