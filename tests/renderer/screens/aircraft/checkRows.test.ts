import { expect, test } from 'vitest';
import { checkParts, comparedOn } from '../../../../renderer/screens/aircraft/checkRows.ts';
import type { AircraftRecord } from '../../../../shared-calc/loading/records.ts';
import { exampleAircraft } from '../../../main/example-aircraft.ts';

/** The example with every figure that may be left out filled in. */
function fullAircraft(): AircraftRecord {
  const aircraft = exampleAircraft();
  const [front, rear] = aircraft.tanks;
  const [left, right, baggage] = aircraft.stations;
  if (front === undefined || rear === undefined) throw new Error('two tanks');
  if (left === undefined || right === undefined || baggage === undefined) throw new Error('three stations');
  return {
    ...aircraft,
    maxMasses: { rampKg: 602, takeOffKg: 600, landingKg: 570, zeroFuelKg: 540 },
    leftRightMostKg: 20,
    lateral: { across: 'arm', left: -0.1, right: 0.1, oilArmM: 0 },
    stations: [
      {
        ...left,
        leastKg: 55,
        lateralArmM: -0.28,
        arm: { kind: 'adjustable', foremostM: 1.9, aftmostM: 2.0 },
      },
      right,
      baggage,
    ],
    groups: aircraft.groups.map((group) => ({ ...group, emptyPartKg: 3 })),
    tanks: [
      { ...front, lateralArmM: -1.5, blend: { kind: 'motor gasoline', ethanolPercent: 7 } },
      {
        ...rear,
        blend: { kind: 'own', at15KgPerL: 0.74 },
        arm: {
          kind: 'momentTable',
          counts: 'total',
          tableDensityKgPerL: 0.71,
          knots: [
            { volumeL: 10, momentKgM: 16 },
            { volumeL: 45, momentKgM: 72.5 },
          ],
        },
      },
    ],
  };
}

/** Paths to every number in a record. */
function numbersIn(value: unknown, path: (string | number)[] = []): (string | number)[][] {
  if (typeof value === 'number') return [path];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, each]) => numbersIn(each, [...path, key]));
}

function changedAt(aircraft: AircraftRecord, path: readonly (string | number)[]): AircraftRecord {
  const copy = structuredClone(aircraft);
  const last = path.at(-1) ?? '';
  const holder = path
    .slice(0, -1)
    .reduce<Record<string, unknown>>(
      (at, key) => at[key] as Record<string, unknown>,
      copy as unknown as Record<string, unknown>,
    );
  holder[last] = (holder[last] as number) + 1;
  return copy;
}

test('every single number that was entered stands on the page: none can be changed without changing it', () => {
  const aircraft = fullAircraft();
  const page = (of: AircraftRecord) => JSON.stringify(checkParts(of, null, null));
  const paths = numbersIn(aircraft);
  expect(paths.length).toBe(57);
  // The tail's end is measured for the drawing; no manual's limit rests on it. A typed density does not count beside a kind
  // of fuel.
  const unseen = paths.filter((path) => page(changedAt(aircraft, path)) === page(aircraft));
  expect(unseen.map((path) => path.join('.'))).toEqual([
    'tailEndArmM',
    'tanks.0.densityKgPerL',
    'tanks.1.densityKgPerL',
  ]);
});

test('a limit of several stations names them, and moments stand divided as the manual prints them', () => {
  const aircraft = exampleAircraft();
  const rows = checkParts(aircraft, null, null).flatMap((part) => part.rows);
  expect(rows.find(({ what }) => what === 'Both seats counts')?.figure).toBe('Left seat and Right seat');
  const divided = {
    ...aircraft,
    printed: { mass: 'lb', arm: 'in', volume: 'US gal', momentPer: 1000 } as const,
    envelopes: aircraft.envelopes.map((envelope) => ({
      ...envelope,
      across: 'moment' as const,
      // 82.5 lb in/1000, by the definitions of pound and inch.
      vertices: envelope.vertices.map((v) => ({ ...v, across: 82_500 * 0.45359237 * 0.0254 })),
    })),
  };
  const part = checkParts(divided, null, null).find(({ title }) => title.startsWith('Envelope'));
  expect(part?.rows.find(({ what }) => what === 'vertex 1')?.figure).toMatch(/^82\.5\u00a0lb in\/1000, /);
});

test('figures are written in the manual’s own units, as they were typed', () => {
  const aircraft = { ...exampleAircraft(), printed: { mass: 'lb', arm: 'in', volume: 'US gal' } as const };
  const inPounds = { ...aircraft, maxMasses: { ...aircraft.maxMasses, takeOffKg: 1320 * 0.45359237 } };
  const [first] = checkParts(inPounds, null, null);
  const tank = checkParts(exampleAircraft(), null, null).find(({ title }) => title === 'Front tank');
  expect(tank?.rows.find(({ what }) => what === 'density')?.figure).toBe('0.72\u00a0kg/L');
  expect(first?.rows.find(({ what }) => what === 'maximum at take-off')?.figure).toBe('1320\u00a0lb');
});

test('the mark is set on every figure from the manual and on no measured or estimated one', () => {
  const aircraft = exampleAircraft();
  const [left, ...others] = aircraft.stations;
  if (left === undefined) throw new Error('a station');
  const measured = { ...left, source: { from: 'measured' as const, comparedOn: null } };
  const after = comparedOn({ ...aircraft, stations: [measured, ...others] }, '2026-11-25');
  expect(after.stations.map(({ source }) => source.comparedOn)).toEqual([null, '2026-11-25', '2026-11-25']);
  expect([...after.tanks, ...after.envelopes].map(({ source }) => source.comparedOn)).toEqual(
    Array.from({ length: 3 }, () => '2026-11-25'),
  );
  expect([after.limitsSource.comparedOn, after.performanceSource.comparedOn]).toEqual([
    '2026-11-25',
    '2026-11-25',
  ]);
});
