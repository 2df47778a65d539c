import { studyChecks, type CheckStudy } from '../shared-calc/fuel/checks/simulate-checks.ts';

// How often a good gauge is called wrong, and how soon one that has changed is found: invented gauges, each calibrated
// once by an invented fill test and then checked flight by flight.

const percent = (ratio: number) => `${(100 * ratio).toFixed(1)} %`;
function print(title: string, { seriesCount, alarmRatio, meanFirst, meanSquare }: CheckStudy): void {
  console.log(
    `${title}: called wrong in ${percent(alarmRatio)} of ${String(seriesCount)} series, ` +
      `at check ${meanFirst.toFixed(1)} on average; mean square of the residuals ${meanSquare.toFixed(2)}`,
  );
}

const good = studyChecks(400, 71_000_000, 16, Infinity, 0);
print('good gauges, sixteen checks', good);
const tenth = studyChecks(200, 72_000_000, 20, 6, 0.1);
print('a tenth short from the seventh of twenty checks on', tenth);
const fifth = studyChecks(200, 72_000_000, 20, 6, 0.2);
print('a fifth short from the seventh of twenty checks on', fifth);

const checks: [sentence: string, met: boolean][] = [
  // Limits alone: 1 - 0.9973^16 is 4.2 %; sums: 16 of a mean run of 465 checks, 3.4 %.
  ['good gauges are called wrong in at most 8 % of series', good.alarmRatio <= 0.08],
  ['the stated uncertainties are right, or a little wide', good.meanSquare > 0.75 && good.meanSquare < 1.1],
  ['a fifth short is found in at least 80 % of series', fifth.alarmRatio >= 0.8],
];
for (const [sentence, met] of checks) console.log(met ? 'met     ' : 'not met ', sentence);
const failed = checks.filter(([, met]) => !met).length;
console.log(`${String(checks.length - failed)} passed, ${String(failed)} failed`);
process.exitCode = failed === 0 ? 0 : 1;
