import { bandShapeOf, endKnots, shapeOf, volumesAt } from '../../../shared-calc/fuel/curve-shape.ts';
import { requireTank, usableAfterRows } from '../../../shared-calc/fuel/fill-run.ts';
import type { FillRun } from '../../../shared-calc/fuel/fill-run.ts';
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
import { byHandOf, fuelTankOf, runsOfTest } from '../../../shared-calc/fuel/records.ts';
import { curveResiduals, flagRows } from '../../../shared-calc/fuel/row-flags.ts';
import { compareCurves } from '../../../shared-calc/fuel/compare-curves.ts';
import { csvRows } from '../../../shared-calc/fuel/csv/cells.ts';
import { readingUnit } from '../../../shared-calc/fuel/csv/columns.ts';
import { runsFromCsv } from '../../../shared-calc/fuel/csv/read-runs.ts';
import { runsToCsv } from '../../../shared-calc/fuel/csv/write-runs.ts';
import { covariance, pairedRefits, refitVolumesAtL } from '../../../shared-calc/fuel/kept-refits.ts';
import { positionOf } from '../../../shared-calc/fuel/position-of.ts';
import { flagRun } from '../../../shared-calc/fuel/run-flags.ts';
import { leastPairs } from '../../../shared-calc/fuel/least-together.ts';
import { drawsOf, isDoubtful, thinned, totalFuel } from '../../../shared-calc/fuel/total-fuel.ts';
import { fuelDensityKgPerL, weighedVolumeL } from '../../../shared-calc/fuel/weighed-volume.ts';
import { exampleFillTest } from '../../main/example-fill-test.ts';
import { BANDED } from '../fuel/banded-example.ts';
import { curveOf, filling, read, TANK, WITH_DEAD_ZONE } from '../fuel/fill-tests.ts';
import { byPosition, type RangeRow, type RoomRefusals } from './table.ts';

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

const weighed = { densityKgPerL: 0.74, temperatureC: 15 };
const keptRefits = { positionsRatio: [0.25, 0.75], volumesL: [[10, 36]], containerErrors: {} };
const readPercent = (step: number) =>
  runsFromCsv({
    text: 'volume_L,reading_percent\n5,50\n',
    scale: { kind: 'percent', step },
    containers: [],
    newId: () => 'id',
    nowEpochS: 0,
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
    byPosition(fuelDensityKgPerL, [
      { field: 'densityKgPerL', min: 0.653, max: 0.838, good: 0.74 },
      { field: 'atC', min: -40, max: 60, good: 15 },
      { field: 'fuelC', min: -40, max: 60, good: 20 },
    ]),
    {
      of: weighedVolumeL,
      ranges: [
        { field: 'massKg', min: 0, max: 1000, call: (v) => weighedVolumeL(v, weighed, null) },
        { field: 'fuelC', min: -40, max: 60, call: (v) => weighedVolumeL(1, weighed, v) },
      ],
    },
    {
      of: refitVolumesAtL,
      ranges: [
        {
          field: 'positionRatio',
          min: 0.25 - 1e-10,
          max: 0.75 + 1e-10,
          call: (v) => refitVolumesAtL(keptRefits, v),
        },
      ],
    },
    {
      of: flagRun,
      ranges: [
        {
          field: 'resolutionRatio',
          min: 0.001,
          max: 0.5,
          call: (v) => flagRun(filling([5, 0.5]), TANK, { resolutionRatio: v, endsAt: null }),
        },
      ],
    },
    {
      of: leastPairs,
      ranges: [
        {
          field: 'usableL',
          min: 0,
          max: 3000,
          call: (v) => {
            const tank = { curve: BANDED, refits: null, scale: EIGHTHS };
            return leastPairs(tank, tank, [], v, 'needleOnMark');
          },
        },
      ],
    },
    {
      of: totalFuel,
      ranges: [
        {
          field: 'positionRatio',
          min: 0,
          max: 1,
          call: (v) => totalFuel([{ curve: BANDED, refits: null, reading: read(v) }], 'needleOnMark'),
        },
      ],
      refused: [
        { when: 'no tank', call: () => totalFuel([], 'needleOnMark'), sentence: /at least one tank/ },
      ],
    },
    {
      of: runsToCsv,
      ranges: [
        {
          field: 'step',
          min: 0.1,
          max: 50,
          call: (v) => runsToCsv({ ...exampleFillTest(), scale: { kind: 'percent', step: v } }, []),
        },
      ],
    },
    {
      of: runsFromCsv,
      ranges: [{ field: 'step', min: 0.1, max: 50, call: readPercent }],
    },
  ],
  takeNoNumber: [
    [runsOfTest, 'gathers a record that the store has let through; usableAfterRows refuses its volumes'],
    [fuelTankOf, 'splits a record that the store has let through; requireTank refuses its volumes'],
    [drawsOf, 'fuelAtReading refuses its reading; totalFuel shows it'],
    [isDoubtful, 'takes what the curves of a fit gave'],
    [thinned, 'takes what the curves of a fit gave'],
    [positionOf, 'takes a reading that the door has let through'],
    [byHandOf, 'counts what a record holds'],
    [compareCurves, 'takes curves that the fit has made; readings outside either are left out'],
    [pairedRefits, 'takes curves that the fit has made'],
    [covariance, 'takes numbers of any size'],
    [csvRows, 'takes text'],
    [readingUnit, 'names the unit of a scale'],
    [endKnots, 'takes a curve that the fit has made'],
    [divisionText, 'takes a scale that requireScale has let through'],
    [printedSpan, 'takes a scale that requireScale has let through'],
  ],
};
