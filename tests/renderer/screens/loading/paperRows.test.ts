import { expect, test } from 'vitest';
import { flightLines, stationLines } from '../../../../renderer/screens/loading/paperRows.ts';
import type { LoadingInputs } from '../../../../shared-calc/loading/case-of.ts';
import { UNIT_PRESETS } from '../../../../shared-calc/units/preferences.ts';
import { shown, shownFigure } from '../../../../shared-calc/units/shown.ts';
import { loadingReview } from '../../../../shared-calc/wording/loading-review.ts';
import { exampleAircraft, exampleLoading, examplePerson } from '../../../main/example-aircraft.ts';

const units = UNIT_PRESETS.metric;
const shownIn = {
  shown: (value: number, quantity: 'mass', question?: 'plain') =>
    shown(value, quantity, units[quantity], question),
  figure: (value: number, quantity: 'mass', question?: 'plain') =>
    shownFigure(value, quantity, units[quantity], question),
} as Parameters<typeof stationLines>[2];

const inputs: LoadingInputs = {
  aircraft: exampleAircraft(),
  weighing: {
    id: 'w',
    aircraftId: 'two-seater',
    weighedOn: '2026-03-14',
    how: 'scales',
    emptyMassKg: 318,
    emptyArmM: 1.776,
    massSdKg: 1,
    armSdM: 0.002,
    unusableFuelIncluded: true,
    oilIncluded: false,
    note: '',
    readings: [],
    withdrawn: false,
  },
  loading: exampleLoading(),
  people: [{ ...examplePerson('mara', 'Mara', 68), known: 'stated', knownOn: null, biasKg: 4.5, sdKg: 3.95 }],
};
const { result } = loadingReview(inputs, units);
if (result === null) throw new Error('no result');
const lines = stationLines(inputs, result, shownIn);

test('all lines of the stations add up to the ramp of the flight, in mass and moment', () => {
  const sum = (of: 'massKg' | 'momentKgM') => lines.reduce((total, line) => total + line[of], 0);
  // By hand: 318 + 2.7 of oil + 68 + 4.5 added + 15 of bag + (48 + 34.3) × 0.72.
  expect(sum('massKg')).toBeCloseTo(318 + 2.7 + 72.5 + 15 + 82.3 * 0.72, 9);
  expect(sum('massKg')).toBeCloseTo(result.ramp.massKg, 9);
  expect(sum('momentKgM')).toBeCloseTo(result.ramp.momentKgM, 9);
});

test('each line says how its figure is known', () => {
  const known = lines.map(({ place, known }) => `${place}: ${known.replaceAll('\u00a0', ' ')}`);
  expect(known).toEqual([
    'Empty aeroplane: 14 March 2026, ±1.7 kg',
    'Oil: not in the empty weight',
    'Left seat: stated, 68.0 +4.5 kg, ±6.5 kg',
    'Baggage: weighed, ±0.5 kg',
    'Front tank: 47.0 to 48.5 L, nine times in ten',
    'Rear tank: 33.5 to 35.0 L, nine times in ten',
  ]);
});

test('the flight has its totals, each against the maximum mass of its own part', () => {
  const flight = flightLines(inputs, result);
  expect(flight.filter(({ isTotal }) => isTotal).map(({ name }) => name)).toEqual([
    'Ramp',
    'Take-off',
    'Landing',
    'Zero fuel',
  ]);
  const byName = new Map(flight.map((line) => [line.name, line]));
  expect(byName.get('Take-off')?.toMassKg).toBeCloseTo(600 - (result.ramp.massKg - 1.5 * 0.72), 9);
  expect(byName.get('Landing')?.toMassKg).toBeCloseTo(570 - (result.ramp.massKg - 58.5 * 0.72), 9);
  // The manual gives none for the ramp and for zero fuel.
  expect(byName.get('Ramp')?.toMassKg).toBeNull();
  expect(byName.get('Zero fuel')?.toMassKg).toBeNull();
  expect(flight.filter(({ isLeast }) => isLeast)).toHaveLength(1);
});
