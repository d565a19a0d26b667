// Holds the figures that a page showed at a lesson's end against those of analyze --format json, in the
// steps that the page shows them in: half a centimetre, whole degrees, 5 ms.
import {readFileSync} from 'node:fs';

// Where no cable was pulled, no unit lost a sample. Usage: node same-figures.mjs PAGE ANALYSED [unplugged].
const [page, analysed] = process.argv.slice(2, 4).map(file => JSON.parse(readFileSync(file)));
const isUnplugged = process.argv[4] === 'unplugged';
const STEP = {mm: 5, deg: 1, ms: 5};
const PER = {mm: 10, deg: 1, ms: 1};
const swings = analysed.recordings.flatMap(recording => recording.swings);
let different = page.figures.length === swings.length ? 0 : 1;
let held = 0;
page.figures.forEach((row, i) => row.forEach(cell => {
  const [id, at] = (cell.id ?? '@').split('@');
  const its = id && swings[i]?.measures.find(measure => measure.id === id && measure.at === at);
  const shown = /^~?([\d.]+)/.exec(cell.text);
  if (!its || its.value === null || !shown) return;
  const step = STEP[its.unit] ?? 0.1;
  const expected = Math.round(Math.abs(its.value) / step) * step / (PER[its.unit] ?? 1);
  const isWay = /away|after/.test(cell.text) ? its.value <= 0 : /towards|before/.test(cell.text) ? its.value >= 0 : true;
  held += 1;
  if (Math.abs(expected - Number(shown[1])) < 1e-6 && isWay) return;
  different += 1;
  console.error(`ball ${i + 1}, ${cell.id}: page ${cell.text}, analyze ${its.value}`);
}));
for (const unit of analysed.recordings.flatMap(recording => recording.units)) {
  if (unit.lostPct === 0 || isUnplugged) continue;
  different += 1;
  console.error(`${unit.point}: ${unit.lostPct} % of its samples are lost`);
}
console.log(`${page.figures.length} balls, ${held} figures, ${different} differences`);
process.exit(different === 0 && held > 0 ? 0 : 1);
