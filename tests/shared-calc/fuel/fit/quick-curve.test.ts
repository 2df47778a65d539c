import { expect, test } from 'vitest';
import { bandShapeOf } from '../../../../shared-calc/fuel/curve-shape.ts';
import { bandedCurveOf } from '../../../../shared-calc/fuel/fit/banded-curve.ts';
import { fitRows, type FillData } from '../../../../shared-calc/fuel/fit/fill-data.ts';
import { fitGauge } from '../../../../shared-calc/fuel/fit/gauge-fit.ts';
import { NewtonFit } from '../../../../shared-calc/fuel/fit/newton.ts';
import { meanOfModesL, modesToFollow, quickCurve } from '../../../../shared-calc/fuel/fit/quick-curve.ts';
import { weightedModes } from '../../../../shared-calc/fuel/fit/refits.ts';
import { GRID_CELLS } from '../../../../shared-calc/fuel/fit/slope-curve.ts';
import { referenceTanks } from './reference-tanks.ts';

/** The middle pour of the first run so much larger, and every row after it with it. */
function dragged(data: FillData, byL: number): FillData {
  const [run, ...others] = data.runs;
  if (run === undefined) throw new Error('a tank has a run');
  const middle = Math.floor(run.rows.length / 2);
  const rows = run.rows.map((row, index) =>
    index === middle ? { ...row, volumeL: row.volumeL + byL } : row,
  );
  return { ...data, runs: [{ ...run, rows }, ...others] };
}

function whole(data: FillData) {
  const fit = fitGauge(data);
  if (!fit.enough) throw new Error('the tank has readings enough');
  return { modes: modesToFollow(fit.modes), curve: bandedCurveOf(fit, data.capacityL, 0) };
}

/** The largest distance over the readings, in parts of the capacity. */
function apartRatio(data: FillData, distanceL: (index: number) => number): number {
  const { firstPosition, lastPosition } = fitRows(data);
  let most = 0;
  for (let i = Math.ceil(firstPosition * GRID_CELLS); i <= lastPosition * GRID_CELLS; i++)
    most = Math.max(most, distanceL(i));
  return most / data.capacityL;
}

// Between two replies of the worker a hand moves a point by less than a litre. A line of the plot is 0.3 % of it wide.
const MODE_TOLERANCE_RATIO = 0.001;
const DRAWN_TOLERANCE_RATIO = 0.003;

test.each(referenceTanks())(
  'over $id the quick curve is the mode that the whole fit finds anew',
  ({ data }) => {
    const start = whole(data);
    for (const byL of [-0.5, 0, 0.1, 1]) {
      const now = dragged(data, byL);
      const rows = fitRows(now);
      const quickL = meanOfModesL(weightedModes(new NewtonFit(rows), start.modes));
      // Every smoothness and sticking, each from a straight gauge.
      const wholeL = meanOfModesL(weightedModes(new NewtonFit(rows)));
      const ratio = apartRatio(now, (i) => Math.abs((quickL[i] ?? NaN) - (wholeL[i] ?? NaN)));
      expect(ratio, `${String(byL)} L`).toBeLessThan(MODE_TOLERANCE_RATIO);
    }
  },
);

test.each(referenceTanks())(
  'over $id what is drawn under the hand is where the whole fit then draws it',
  ({ data }) => {
    const start = whole(data);
    const now = dragged(data, 1);
    const next = bandShapeOf(whole(now).curve);
    const last = fitRows(now).lastPosition;
    const apartL = quickCurve(fitRows(now), start).map(([position, volumeL]) =>
      Math.abs(volumeL - next(Math.min(last, position)).bestL),
    );
    expect(Math.max(...apartL) / data.capacityL).toBeLessThan(DRAWN_TOLERANCE_RATIO);
    // And nothing jumps where nothing was moved.
    const still = quickCurve(fitRows(data), start);
    const at = bandShapeOf(start.curve);
    for (const [position, volumeL] of still)
      expect(Math.abs(volumeL - at(position).bestL)).toBeLessThan(0.0005 * data.capacityL);
  },
);

test('a row more or fewer than in the whole fit is followed too', () => {
  const [tank] = referenceTanks();
  if (tank === undefined) throw new Error('there are ten');
  const start = whole(tank.data);
  const [run, ...others] = tank.data.runs;
  if (run === undefined) throw new Error('a tank has a run');
  const shorter = { ...tank.data, runs: [{ ...run, rows: run.rows.slice(0, -1) }, ...others] };
  const quickL = meanOfModesL(weightedModes(new NewtonFit(fitRows(shorter)), start.modes));
  const wholeL = meanOfModesL(weightedModes(new NewtonFit(fitRows(shorter))));
  expect(apartRatio(shorter, (i) => Math.abs((quickL[i] ?? NaN) - (wholeL[i] ?? NaN)))).toBeLessThan(
    MODE_TOLERANCE_RATIO,
  );
});
