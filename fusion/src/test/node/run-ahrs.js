// Runs the outside filter over samples from standard input, one a line: gx gy gz ax ay az dt
// (rad/s, m/s^2, s). Prints its quaternion after each: w x y z.
'use strict';

const AHRS = require('ahrs');
const filter = new AHRS({ sampleInterval: 100, algorithm: process.argv[2], beta: 0.05, kp: 0.5 });
const lines = require('fs').readFileSync(0, 'utf8').trim().split('\n');
const out = lines.map((line) => {
  const [gx, gy, gz, ax, ay, az, dt] = line.split(' ').map(Number);
  filter.update(gx, gy, gz, ax, ay, az, undefined, undefined, undefined, dt);
  const q = filter.getQuaternion();
  return `${q.w} ${q.x} ${q.y} ${q.z}`;
});
process.stdout.write(out.join('\n') + '\n');
