import { statSync } from 'node:fs';
import { expect, test } from 'vitest';
import { findAirports } from '../../../main/airports/airport-list.ts';

// Expected figures are read off the CSV files of OurAirports by hand; a foot is 0.3048 m.

const first = (text: string) => findAirports(text, 12)[0];

test('an airport is found by its identifier, without the K, and by words of name and town', () => {
  for (const text of ['KDEN', 'kden', ' DEN ']) expect(first(text)?.identifier).toBe('KDEN');
  expect(first('denver intern')?.identifier).toBe('KDEN');
  expect(findAirports('municipal lebanon', 12).map(({ identifier }) => identifier)).toContain('KLEB');
  expect(findAirports('KBD', 12).map(({ identifier }) => identifier)).toContain('KBDU');
  expect(findAirports('', 12)).toEqual([]);
  expect(findAirports('no such place at all', 12)).toEqual([]);
});

test('place, elevation and runways are those of the list, in metres', () => {
  const denver = first('KDEN');
  expect(denver).toMatchObject({
    id: 3486,
    name: 'Denver International Airport',
    state: 'CO',
    latitudeDeg: 39.8617,
    longitudeDeg: -104.673,
  });
  // 5 431 ft.
  expect(denver?.elevationM).toBeCloseTo(1655.3688, 9);
  expect(denver?.runways).toHaveLength(6);
  // 16 000 ft by 200 ft.
  expect(denver?.runways.find(({ id }) => id === 244_460)).toEqual({
    id: 244_460,
    lengthM: 4876.8,
    widthM: 60.96,
    surface: 'concrete',
    ends: [
      { ident: '16R', trueHeadingDeg: 181, displacedThresholdM: null },
      { ident: '34L', trueHeadingDeg: 1, displacedThresholdM: null },
    ],
    headingFrom: 'list',
  });
});

test('a heading comes from the list or from the places of the ends, never from the painted number', () => {
  // Boulder: 08/26 has both of its ends' places and no heading; the glider strip has neither.
  const boulder = first('KBDU');
  expect(
    boulder?.runways.map(({ ends, headingFrom }) => [ends[0].ident, ends[0].trueHeadingDeg, headingFrom]),
  ).toEqual([
    ['08', 90, 'ends'],
    ['08G', null, null],
  ]);
});

test('places without an official identifier have none, and no closed place or heliport is offered', () => {
  const invented = findAirports('airport', 500);
  expect(invented.every(({ identifier }) => identifier === null || !identifier.startsWith('US-'))).toBe(true);
  // US-4173 is listed at 12 963 ft on a low desert strip: not believed. 'Morse Field' at South Point is closed.
  expect(findAirports('Morse Field South Point', 12)).toEqual([]);
});

test('surfaces are in words where they are one of the usual ones, and as listed where they are two', () => {
  expect(first('KDEN')?.runways[0]?.surface).toBe('concrete');
  expect(first('00AK')?.runways[0]?.surface).toBe('gravel');
  expect(first('KBDU')?.runways.map(({ surface }) => surface)).toEqual(['asphalt', 'ASPH-TURF-F']);
});

test('the list weighs under 1.5 MB', () => {
  expect(statSync(new URL('../../../main/airports/us-airports.ts', import.meta.url)).size).toBeLessThan(
    1_500_000,
  );
});
