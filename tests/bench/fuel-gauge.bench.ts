import { shapeOf } from '../../shared-calc/fuel/curve-shape.ts';
import type { FillRun } from '../../shared-calc/fuel/fill-run.ts';
import { fitGaugeCurve } from '../../shared-calc/fuel/gauge-curve.ts';
import { fuelAtReading } from '../../shared-calc/fuel/readout.ts';
import { beside, machineLine, seeded } from './measure.ts';

// A drag over the gauge: fit two runs anew, draw 200 points, read out once. The plainest other way is a line between points.
const random = seeded(8);
const TANK = { usableCapacityL: 60, unusableL: 2 };
const runs: FillRun[] = [0, 1].map(() => ({
  direction: 'filling',
  start: { from: 'engineFeed' },
  rows: Array.from({ length: 20 }, (_, i) => ({
    volumeL: 2.5 + random(),
    reading: { at: 'scale', positionRatio: Math.min(0.98, Math.round((0.04 + 0.045 * i) * 64) / 64) },
    setAside: false,
  })),
}));
const fit = fitGaugeCurve(runs, TANK, 1 / 64);
if (fit.kind !== 'curve') throw new Error('the runs of this bench make a curve');
const { curve } = fit;
const first = curve.knots[0]?.positionRatio ?? 0;
const last = curve.knots.at(-1)?.positionRatio ?? 1;
const positions = Float64Array.from({ length: 200 }, (_, i) => first + ((last - first) * i) / 199);
const N = 100;

console.log(machineLine());

beside('fuel gauge: curve from two runs of 20 rows', N, () => {
  let knots = 0;
  for (let i = 0; i < N; i += 1) {
    const again = fitGaugeCurve(runs, TANK, 1 / 64);
    knots += again.kind === 'curve' ? again.curve.knots.length : 0;
  }
  return knots;
});

beside(
  'fuel gauge: 200 points of the curve',
  N,
  () => {
    let sumL = 0;
    for (let i = 0; i < N; i += 1) {
      const shape = shapeOf(curve);
      for (const position of positions) sumL += shape(position).lowL;
    }
    return sumL;
  },
  {
    name: 'straight lines between the same knots',
    run: () => {
      let sumL = 0;
      for (let i = 0; i < N; i += 1) {
        for (const position of positions) {
          const above = curve.knots.findIndex((knot) => knot.positionRatio >= position);
          const b = curve.knots[above];
          const a = curve.knots[above - 1] ?? b;
          if (a === undefined || b === undefined) continue;
          const width = b.positionRatio - a.positionRatio;
          sumL +=
            width === 0 ? b.lowL : a.highL + ((position - a.positionRatio) / width) * (b.lowL - a.highL);
        }
      }
      return sumL;
    },
  },
);

beside('fuel gauge: readout of one reading', N, () => {
  let sumL = 0;
  for (let i = 0; i < N; i += 1) {
    sumL += fuelAtReading(
      curve,
      { at: 'scale', positionRatio: positions[i] ?? 0.5 },
      'nearestDivision',
    ).planningL;
  }
  return sumL;
});
