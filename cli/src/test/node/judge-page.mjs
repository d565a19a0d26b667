// Opens HTML files in one headless Chromium and prints, as a JSON list, what a reader would stumble
// over in each: console errors, requests that leave the file, violations of axe-core, width on a
// phone, printed pages. Usage: node judge-page.mjs PAGE.html... [FOLDER]; with a folder, pictures of
// the last page go there.
import {readFileSync, writeFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import {pathToFileURL} from 'node:url';
import {chromium} from 'playwright-core';

const pages = process.argv.slice(2).filter(name => name.endsWith('.html'));
const folder = process.argv.slice(2).find(name => !name.endsWith('.html'));
const browserPath = process.env.CHROMIUM ?? '/usr/bin/chromium';
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

async function judge(browser, page) {
  const found = {errors: [], requests: [], violations: [], widthOnPhone: 0, printedPages: 0};
  const tab = await browser.newPage({viewport: {width: 1200, height: 900}});
  tab.on('console', m => m.type() === 'error' && found.errors.push(m.text()));
  tab.on('pageerror', e => found.errors.push(String(e)));
  tab.on('request', r => found.requests.push(r.url()));
  const url = pathToFileURL(page).href;
  await tab.goto(url);
  found.requests = found.requests.filter(r => r !== url && !r.startsWith('data:'));
  await tab.evaluate(axe);
  const result = await tab.evaluate(() => window.axe.run());
  found.violations = result.violations.map(v => ({
    id: v.id,
    impact: v.impact,
    nodes: v.nodes.map(n => n.html.slice(0, 160)),
  }));
  if (folder) await tab.screenshot({path: `${folder}/desktop.png`, fullPage: true});
  await tab.setViewportSize({width: 390, height: 844});
  found.widthOnPhone = await tab.evaluate(() => document.documentElement.scrollWidth);
  if (folder) await tab.screenshot({path: `${folder}/phone.png`, fullPage: true});
  const pdf = await tab.pdf({preferCSSPageSize: true, printBackground: false});
  found.printedPages = (pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g) ?? []).length;
  if (folder) writeFileSync(`${folder}/print.pdf`, pdf);
  await tab.close();
  return found;
}

const browser = await chromium.launch({executablePath: browserPath, args: ['--no-sandbox']});
try {
  const all = [];
  for (const page of pages) all.push(await judge(browser, page));
  console.log(JSON.stringify(all, null, 2));
} finally {
  await browser.close();
}
