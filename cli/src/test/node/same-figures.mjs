// Holds the figures that a page showed at a lesson's end against those of analyze --format json.
import {readFileSync} from 'node:fs';

// Where no cable was pulled, no unit lost a sample. Usage: node same-figures.mjs PAGE ANALYSED [unplugged].
const [page, analysed] = process.argv.slice(2, 4).map(file => JSON.parse(readFileSync(file)));
const isUnplugged = process.argv[4] === 'unplugged';
const KEYS = {
  'turn at top': ['pelvis.turn', 'top'], 'slide at top': ['pelvis.slide', 'top'],
  'pivot at top': ['pelvis.centre-distance', 'top'], 'turn at impact': ['pelvis.turn', 'impact'],
  'slide at impact': ['pelvis.slide', 'impact'], 'release': ['wrist.release', ''], 'tempo': ['tempo.ratio', ''],
};
const [head, ...rows] = page.figures;
const swings = analysed.recordings.flatMap(recording => recording.swings);
let different = rows.length === swings.length ? 0 : 1;
rows.forEach((row, i) => head.forEach((name, column) => {
  const [id, at] = KEYS[name] ?? [];
  const its = id && swings[i]?.measures.find(measure => measure.id === id && measure.at === at);
  const shown = /^~?(-?[\d.]+)/.exec(row[column]);
  if (!its || its.value === null || !shown) return;
  const decimals = (shown[1].split('.')[1] ?? '').length;
  if (Math.abs(its.value - Number(shown[1])) > 0.5 * 10 ** -decimals + 1e-6) {
    different += 1;
    console.error(`${row[0]}, ${name}: page ${row[column]}, analyze ${its.value}`);
  }
}));
for (const unit of analysed.recordings.flatMap(recording => recording.units)) {
  if (unit.lostPct === 0 || isUnplugged) continue;
  different += 1;
  console.error(`${unit.point}: ${unit.lostPct} % of its samples are lost`);
}
console.log(`${rows.length} balls, ${different} differences`);
process.exit(different === 0 && rows.length > 0 ? 0 : 1);
