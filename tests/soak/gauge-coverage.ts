import { overall, studyCoverage } from '../shared-calc/fuel/fit/coverage-study.ts';

// The full study of the gauge's band: too long for every run of the checks. Ends with the plain closing line.

const tankCount = 800;
const started = performance.now();
const study = studyCoverage(tankCount, 700_000, 400);
const percent = (ratio: number) => (100 * ratio).toFixed(1).padStart(6);

console.log(
  'group             tanks   held  above  width  read above   (% of readings; width in % of capacity)',
);
for (const row of study.rows)
  console.log(
    row.group.padEnd(16),
    String(row.tankCount).padStart(5),
    percent(row.heldRatio),
    percent(row.aboveRatio),
    percent(row.widthRatio),
    percent(row.readAboveRatio),
  );
console.log(
  'held in each tenth of the sweep:',
  study.tenths.map((ratio) => (100 * ratio).toFixed(0)).join(' '),
);
console.log(
  `${String(study.withoutCurveCount)} without a curve; ${((performance.now() - started) / 1000).toFixed(0)} s`,
);

const all = overall(study);
const kinds = study.rows.filter((row) => ['linear', 's-shaped', 'dead zone', 'dihedral'].includes(row.group));
const checks: [sentence: string, met: boolean][] = [
  ['the band holds 87 to 93 % of readings', all.heldRatio >= 0.87 && all.heldRatio <= 0.93],
  ['every kind of gauge at least 82 %', kinds.every((row) => row.heldRatio >= 0.82)],
  ['every tenth of the sweep at least 84 %', study.tenths.every((ratio) => ratio >= 0.84)],
  ['the planning curve is above the truth at 3 to 7 %', all.aboveRatio >= 0.03 && all.aboveRatio <= 0.07],
  ['the band is at most 5.5 % of the capacity wide', all.widthRatio <= 0.055],
  ['read to the nearest division, above the truth at no more than 7 %', all.readAboveRatio <= 0.07],
];
for (const [sentence, met] of checks) console.log(met ? 'met     ' : 'not met ', sentence);
const failed = checks.filter(([, met]) => !met).length;
console.log(`${String(checks.length - failed)} passed, ${String(failed)} failed`);
process.exitCode = failed === 0 ? 0 : 1;
