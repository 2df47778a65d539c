import { studyAdvice } from '../shared-calc/fuel/fit/advice-study.ts';
import { referenceTanks } from '../shared-calc/fuel/fit/reference-tanks.ts';
import { compareWithSampler } from '../shared-calc/fuel/fit/sampler-study.ts';

// The band against a sampler on the exact likelihood over all ten tanks, and what the advice for the next pour promises
// against what it brings.

const rows = referenceTanks().map((tank) => compareWithSampler(tank, 80, 150));
console.log('tank       the product from the sampler   the sampler from numpy’s   (of the band’s width)');
for (const { id, productRatio, numpyRatio } of rows)
  console.log(id, productRatio.toFixed(3).padStart(24), numpyRatio.toFixed(3).padStart(26));
const mean = rows.reduce((sum, { productRatio }) => sum + productRatio, 0) / rows.length;
const most = Math.max(...rows.map(({ productRatio }) => productRatio));
console.log(`mean ${mean.toFixed(3)}, most ${most.toFixed(3)}`);

const advice = studyAdvice(60, 61_000_000);
const percent = (ratio: number) => `${(100 * ratio).toFixed(1)} %`;
console.log(
  `the best next pour over ${String(advice.tankCount)} tanks: predicted ${percent(advice.predictedRatio)}, ` +
    `realised ${percent(advice.realisedRatio)} (standard error ${percent(advice.realisedSe)}) of the shortfall`,
);

const checks: [sentence: string, met: boolean][] = [
  ['within 0.12 of the band’s width on average', mean <= 0.12],
  ['within 0.25 over any tank', most <= 0.25],
  [
    'the advice’s promise and what it brings differ by at most 3 points',
    Math.abs(advice.predictedRatio - advice.realisedRatio) <= 0.03,
  ],
];
for (const [sentence, met] of checks) console.log(met ? 'met     ' : 'not met ', sentence);
const failed = checks.filter(([, met]) => !met).length;
console.log(`${String(checks.length - failed)} passed, ${String(failed)} failed`);
process.exitCode = failed === 0 ? 0 : 1;
