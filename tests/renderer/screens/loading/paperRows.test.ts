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
const lines = stationLines(inputs, result, shownIn, units);

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
    'Front tank: 47.0 to 48.5 L, nine times in ten; 0.720 kg/L as typed',
    'Rear tank: 33.5 to 35.0 L, nine times in ten; 0.720 kg/L as typed',
  ]);
});

test('lateral arms stand beside the others where the manual gives them, and add up to the CG to the side', () => {
  expect(lines.map(({ lateralArmM }) => lateralArmM)).toEqual([null, null, null, null, null, null]);
  const aircraft = exampleAircraft();
  const [left, right, bag] = aircraft.stations;
  const [front, rear] = aircraft.tanks;
  if (left === undefined || right === undefined || bag === undefined) throw new Error('no stations');
  if (front === undefined || rear === undefined) throw new Error('no tanks');
  Object.assign(left, { lateralArmM: -0.28 });
  Object.assign(bag, { lateralArmM: 0.1 });
  Object.assign(front, { lateralArmM: -0.4 });
  Object.assign(rear, { lateralArmM: 0.3 });
  aircraft.lateral = { across: 'arm', left: -0.1, right: 0.2, oilArmM: 0 };
  const besides = { ...inputs, aircraft };
  const unweighed = loadingReview(besides, units);
  expect(unweighed.result).toBeNull();
  if (inputs.weighing === null) throw new Error('no weighing');
  besides.weighing = { ...inputs.weighing, lateralArmM: 0.002, lateralArmSdM: 0.001 };
  const reviewed = loadingReview(besides, units).result;
  if (reviewed === null) throw new Error('no result');
  const rows = stationLines(besides, reviewed, shownIn, units);
  expect(rows.map(({ lateralArmM }) => lateralArmM)).toEqual([0.002, 0, -0.28, 0.1, -0.4, 0.3]);
  const sum = rows.reduce((total, { massKg, lateralArmM }) => total + massKg * (lateralArmM ?? 0), 0);
  const [ramp] = flightLines(besides, reviewed);
  expect(ramp?.point.lateralArmM).toBeCloseTo(sum / reviewed.ramp.massKg, 12);
  expect(ramp?.toLeftM).toBeCloseTo(sum / reviewed.ramp.massKg + 0.1, 12);
  expect(ramp?.toRightM).toBeCloseTo(0.2 - sum / reviewed.ramp.massKg, 12);
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
