import { bandShapeOf, endKnots } from '../../shared-calc/fuel/curve-shape.ts';
import { calibrate } from '../../shared-calc/fuel/fit/calibrate.ts';
import { fuelAtReading } from '../../shared-calc/fuel/readout.ts';
import { totalFuel } from '../../shared-calc/fuel/total-fuel.ts';
import { exampleFillTest } from '../main/example-fill-test.ts';
import { beside, machineLine } from './measure.ts';

// What a move of the reading asks of an adopted curve: 200 points of its band, one readout, the total of two tanks.
const found = calibrate([exampleFillTest()], [], { capacityL: 45, unusableL: 1 });
if (found.kind !== 'curve') throw new Error('the example makes a curve');
const { curve, refits } = found;
const { first, last } = endKnots(curve);
const span = last.positionRatio - first.positionRatio;
const positions = Float64Array.from({ length: 200 }, (_, i) => first.positionRatio + (span * i) / 199);
const N = 100;

console.log(machineLine());

beside('fuel gauge: 200 points of the band', N, () => {
  let sumL = 0;
  for (let i = 0; i < N; i += 1) {
    const shape = bandShapeOf(curve);
    for (const position of positions) sumL += shape(Math.min(position, last.positionRatio)).lowL;
  }
  return sumL;
});

beside('fuel gauge: readout of one reading', N, () => {
  let sumL = 0;
  for (let i = 0; i < N; i += 1) {
    const positionRatio = positions[i] ?? 0.5;
    sumL += fuelAtReading(curve, { at: 'scale', positionRatio }, 'nearestDivision').planningL;
  }
  return sumL;
});

const few = 5;
beside('fuel gauge: two tanks together, 400 curves each', few, () => {
  let sumL = 0;
  for (let i = 0; i < few; i += 1) {
    const reading = { at: 'scale', positionRatio: 0.25 + i / 16 } as const;
    const tank = { curve, refits, reading };
    sumL += totalFuel([tank, tank], 'nearestDivision').planningL;
  }
  return sumL;
});
