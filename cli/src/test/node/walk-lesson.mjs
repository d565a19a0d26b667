// Walks a rehearsed lesson in headless Chromium as a teacher would, and prints as JSON what was seen:
// console errors, requests that leave the machine, violations of axe-core, sizes, and every ball's
// figures. The second part goes on after the program was started anew. Usage:
// node walk-lesson.mjs ADDRESS BALLS first|second [FOLDER]; with a folder, pictures go there.
import {readFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import {chromium} from 'playwright-core';

const [address, balls, half, folder] = process.argv.slice(2);
const origin = new URL(address).origin;
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const seen = {errors: [], requests: [], violations: [], said: [], figures: [], mainHeight: 0, smallest: 99};
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

async function look(name) {
  const client = await context.newCDPSession(tab);
  const {result} = await client.send('Runtime.evaluate', {
    expression: `(() => { ${axe}; return axe.run().then(r => r.violations.map(v => v.id + ': ' + v.nodes.map(n => n.html.slice(0, 120)).join(' | '))); })()`,
    awaitPromise: true, returnByValue: true,
  });
  seen.violations.push(...(result.value ?? ['axe did not run']).map(v => `${name}: ${v}`));
  if (!folder) return;
  for (const [screen, [width, height]] of Object.entries(SCREENS)) {
    await tab.setViewportSize({width, height});
    await tab.waitForTimeout(150);
    await tab.screenshot({path: `${folder}/${name}-${screen}.png`, fullPage: screen !== 'laptop'});
    const wide = await tab.evaluate(() => document.documentElement.scrollWidth);
    if (wide > width + 1) seen.errors.push(`${name} on ${screen}: ${wide} px wide`);
  }
  await tab.setViewportSize({width: 1280, height: 800});
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
  await tab.check('[name=consent]');
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
  await tab.waitForTimeout(1500);
  await tab.click('#begin');
  await tab.waitForFunction(() => /To the straps/.test(document.getElementById('on').textContent));
  await look('table');
  await tab.click('#on');
  await stage('strap');
  await look('strap');
  await tab.click('#on');
  await stage('steps');
  const names = ['Aim', 'Quiet stance', 'Bow', 'Straight wrist', 'Cock the wrist', 'Turn on the spot'];
  for (const name of names) await step(name, name === 'Quiet stance');
  await look('steps');
  await tab.click('#on');
  await stage('balls');
  await look('balls-before');
  for (let n = 1; n <= Number(balls); n += 1) {
    await ball(n);
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
  await tab.getByRole('button', {name: 'Pull a cable'}).click();
  await tab.waitForFunction(() => document.getElementById('trouble').innerText.includes('pelvis'));
  seen.said.push(await tab.locator('#trouble p').first().innerText());
  await look('unplugged');
  await tab.waitForFunction(() => !document.getElementById('trouble').innerText.includes('pelvis:'), null, {timeout: 20000});
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
  await look('drill');
  seen.cueMs = await tab.evaluate(() => {
    const sorted = [...window.steadyturnCueDelaysMs].sort((a, b) => a - b);
    return {count: sorted.length, median: sorted[Math.floor(sorted.length / 2)], p99: sorted[Math.floor(sorted.length * 0.99)]};
  });
  await tab.click('#drill-end');
  await tab.click('#back');
  await stage('balls');
  await ball(Number(balls) + 3);
  await tab.waitForFunction(() => document.querySelector('.difference').childElementCount > 1);
  seen.said.push(await tab.locator('.difference').innerText());
  await look('after-drill');
}

async function second() {
  const struck = Number(balls) + 3;
  await tab.goto(address);
  await stage('balls');
  await tab.waitForFunction(count => document.querySelectorAll('.strip li').length >= count, struck);
  await ball(struck + 1);
  await tab.reload();
  await tab.waitForFunction(count => document.querySelectorAll('.strip li').length >= count, struck + 1);
  await tab.click('#discard');
  await tab.waitForFunction(() => document.querySelector('.strip .out'));
  await tab.keyboard.press('u');
  await tab.waitForFunction(() => !document.querySelector('.strip .out'));
  await tab.click('#curves');
  await tab.waitForSelector('.curves canvas');
  await look('curves');
  await tab.keyboard.press('Escape');
  await tab.click('#finish');
  await tab.waitForSelector('.numbers table', {timeout: 90000});
  await look('closing');
  seen.figures = await tab.evaluate(() => [...document.querySelectorAll('.numbers tr')].map(row => [...row.children].map(cell => cell.textContent)));
  const [home] = await Promise.all([context.waitForEvent('page'), tab.getByRole('link', {name: 'Page for the player'}).click()]);
  await home.waitForLoadState();
  seen.said.push(await home.title());
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
