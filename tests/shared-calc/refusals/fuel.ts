import {
  bandShapeOf,
  endKnots,
  needleAt,
  shapeOf,
  volumesAt,
} from '../../../shared-calc/fuel/curve-shape.ts';
import { requireTank, usableAfterRows } from '../../../shared-calc/fuel/fill-run.ts';
import type { FillRun } from '../../../shared-calc/fuel/fill-run.ts';
import { fitGaugeCurve } from '../../../shared-calc/fuel/gauge-curve.ts';
import {
  divisionText,
  printedSpan,
  readingText,
  requireScale,
  resolutionRatio,
  scaleMarks,
} from '../../../shared-calc/fuel/gauge-scale.ts';
import type { GaugeScale } from '../../../shared-calc/fuel/gauge-scale.ts';
import { leastMarkFor } from '../../../shared-calc/fuel/least-mark.ts';
import { parseReading } from '../../../shared-calc/fuel/parse-reading.ts';
import { fuelAtReading } from '../../../shared-calc/fuel/readout.ts';
import { fuelTankOf, runsOfTest } from '../../../shared-calc/fuel/records.ts';
import { curveResiduals, flagRows } from '../../../shared-calc/fuel/row-flags.ts';
import { BANDED } from '../fuel/banded-example.ts';
import { curveOf, filling, read, TANK, WITH_DEAD_ZONE } from '../fuel/fill-tests.ts';
import type { RangeRow, RoomRefusals } from './table.ts';

const EIGHTHS: GaugeScale = { kind: 'fractions', denominator: 8 };
const curve = curveOf([WITH_DEAD_ZONE], 0.125);
const knownStart = (usableL: number): FillRun => ({
  direction: 'draining',
  start: { from: 'known', usableL },
  rows: [],
});
const litres = (atEmpty: number, atFull: number, step: number): GaugeScale => ({
  kind: 'volume',
  unit: 'L',
  atEmpty,
  atFull,
  step,
});
const onPlace = (call: (positionRatio: number) => unknown): RangeRow => ({
  field: 'positionRatio',
  min: 0.125,
  max: 0.875,
  call,
});

export const refusals: RoomRefusals = {
  functions: [
    {
      of: requireTank,
      ranges: [
        {
          field: 'usableCapacityL',
          min: 0.1,
          max: 1000,
          call: (v) => {
            requireTank({ usableCapacityL: v, unusableL: 0 });
          },
        },
        {
          field: 'unusableL',
          min: 0,
          max: 100,
          call: (v) => {
            requireTank({ usableCapacityL: 50, unusableL: v });
          },
        },
      ],
    },
    {
      of: usableAfterRows,
      ranges: [
        {
          field: 'runs[0].rows[0].volumeL',
          min: 0,
          max: 1000,
          call: (v) => usableAfterRows(filling([v, 'E']), TANK),
        },
        {
          field: 'runs[1].start.usableL',
          min: -2,
          max: 60,
          call: (v) => usableAfterRows(knownStart(v), TANK, 1),
        },
        {
          field: 'usableCapacityL',
          min: 0.1,
          max: 1000,
          call: (v) => usableAfterRows(filling(), { usableCapacityL: v, unusableL: 0 }),
        },
      ],
      refused: [
        {
          when: 'a draining run that starts empty',
          call: () => usableAfterRows({ ...knownStart(0), start: { from: 'sump' } }, TANK),
          sentence: /runs\[0\]\.start: a draining run needs/,
        },
      ],
    },
    {
      of: fitGaugeCurve,
      ranges: [
        { field: 'resolutionRatio', min: 0.001, max: 0.5, call: (v) => fitGaugeCurve([], TANK, v) },
        {
          field: 'runs[0].rows[0].positionRatio',
          min: 0,
          max: 1,
          call: (v) => fitGaugeCurve([filling([5, v])], TANK, 0.1),
        },
      ],
    },
    { of: volumesAt, ranges: [onPlace((v) => volumesAt(curve, v))] },
    { of: shapeOf, ranges: [onPlace((v) => shapeOf(curve)(v))] },
    {
      of: bandShapeOf,
      ranges: [
        {
          field: 'positionRatio',
          min: 0.25 - 1e-10,
          max: 0.75 + 1e-10,
          call: (v) => bandShapeOf(BANDED)(v),
        },
      ],
    },
    { of: needleAt, ranges: [{ field: 'usableL', min: 0, max: 60, call: (v) => needleAt(curve, v) }] },
    {
      of: fuelAtReading,
      ranges: [
        {
          field: 'positionRatio',
          min: 0,
          max: 1,
          call: (v) => fuelAtReading(curve, read(v), 'needleOnMark'),
        },
      ],
    },
    {
      of: leastMarkFor,
      ranges: [
        { field: 'usableL', min: 0, max: 1000, call: (v) => leastMarkFor(curve, EIGHTHS, v, 'needleOnMark') },
      ],
    },
    {
      of: requireScale,
      ranges: [
        {
          field: 'step',
          min: 0.1,
          max: 50,
          call: (v) => {
            requireScale({ kind: 'percent', step: v });
          },
        },
        {
          field: 'step',
          min: 0.06,
          max: 30,
          call: (v) => {
            requireScale(litres(0, 60, v));
          },
        },
        {
          field: 'atFull',
          min: 0.1,
          max: 10000,
          call: (v) => {
            requireScale(litres(0, v, v / 4));
          },
        },
        {
          field: 'atEmpty',
          min: -10000,
          max: 10000,
          call: (v) => {
            requireScale({
              kind: 'numbers',
              atEmpty: v,
              atFull: 1,
              step: 100 * Math.min(50, Math.abs(v - 1) / 200),
            });
          },
        },
      ],
      refused: [
        {
          when: 'half a bar',
          call: () => {
            requireScale({ kind: 'bars', count: 7.5 });
          },
          sentence: /count: is 7.5; a whole number/,
        },
        {
          when: 'one division only',
          call: () => {
            requireScale({ kind: 'fractions', denominator: 1 });
          },
          sentence: /denominator is 1; allowed 2 to 100/,
        },
        {
          when: 'a scale whose ends print the same',
          call: () => {
            requireScale({ kind: 'numbers', atEmpty: 5, atFull: 5, step: 1 });
          },
          sentence: /atFull - atEmpty/,
        },
      ],
    },
    {
      of: resolutionRatio,
      ranges: [
        { field: 'step', min: 0.1, max: 50, call: (v) => resolutionRatio({ kind: 'percent', step: v }) },
      ],
    },
    {
      of: readingText,
      ranges: [{ field: 'positionRatio', min: 0, max: 1, call: (v) => readingText(read(v), EIGHTHS) }],
    },
    {
      of: scaleMarks,
      ranges: [{ field: 'step', min: 0.1, max: 50, call: (v) => scaleMarks({ kind: 'percent', step: v }) }],
    },
    {
      of: parseReading,
      ranges: [
        { field: 'step', min: 0.1, max: 50, call: (v) => parseReading('E', { kind: 'percent', step: v }) },
      ],
    },
    {
      of: flagRows,
      ranges: [
        {
          field: 'runs[0].rows[0].volumeL',
          min: 0,
          max: 1000,
          call: (v) => flagRows([filling([v, 'E'])], TANK),
        },
        {
          field: 'unusableL',
          min: 0,
          max: 100,
          call: (v) => flagRows([], { usableCapacityL: 50, unusableL: v }),
        },
      ],
    },
    {
      of: curveResiduals,
      ranges: [
        {
          field: 'runs[0].rows[0].volumeL',
          min: 0,
          max: 1000,
          call: (v) => curveResiduals(curve, [filling([v, 'E'])], TANK),
        },
      ],
    },
  ],
  takeNoNumber: [
    [runsOfTest, 'gathers a record that the store has let through; usableAfterRows refuses its volumes'],
    [fuelTankOf, 'splits a record that the store has let through; requireTank refuses its volumes'],
    [endKnots, 'takes a curve that the fit has made'],
    [divisionText, 'takes a scale that requireScale has let through'],
    [printedSpan, 'takes a scale that requireScale has let through'],
  ],
};
