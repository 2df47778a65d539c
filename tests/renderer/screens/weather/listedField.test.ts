import { expect, test } from 'vitest';
import {
  fieldFromList,
  fieldRunway,
  originOf,
  runwaysLeft,
  type ListedAirport,
} from '../../../../renderer/screens/weather/listedField.ts';
import { nearestStation } from '../../../../renderer/screens/weather/nearestStation.ts';

const airport: ListedAirport = {
  id: 7,
  identifier: 'KXYZ',
  name: 'Some Strip',
  municipality: 'Town',
  state: 'CO',
  latitudeDeg: 40,
  longitudeDeg: -105,
  elevationM: 1600,
  isOnWater: false,
  runways: [
    {
      id: 1,
      lengthM: 1200,
      widthM: 20,
      surface: 'asphalt',
      ends: [
        { ident: '08', trueHeadingDeg: 90, displacedThresholdM: 60 },
        { ident: '26', trueHeadingDeg: 270, displacedThresholdM: null },
      ],
      headingFrom: 'ends',
    },
    {
      id: 2,
      lengthM: 600,
      widthM: null,
      surface: 'grass',
      ends: [
        { ident: '17', trueHeadingDeg: null, displacedThresholdM: null },
        { ident: '35', trueHeadingDeg: null, displacedThresholdM: null },
      ],
      headingFrom: null,
    },
  ],
};
const shown = (valueM: number) => `${String(valueM)} m`;

test('a runway without a true heading waits for it and is taken with the one that is given', () => {
  const field = fieldFromList(airport);
  expect(field.runways.map(({ listedId }) => listedId)).toEqual([1]);
  const [left] = runwaysLeft(airport, field.runways);
  expect(left?.id).toBe(2);
  expect(left === undefined ? null : fieldRunway(left, null)).toBeNull();
  const taken = left === undefined ? null : fieldRunway(left, 183);
  expect(taken?.ends.map(({ trueHeadingDeg }) => trueHeadingDeg)).toEqual([183, 3]);
  expect(runwaysLeft(airport, [...field.runways, ...(taken === null ? [] : [taken])])).toEqual([]);
});

test('what is as listed is told from what was corrected and from what the list does not have', () => {
  const field = fieldFromList(airport);
  const untouched = originOf({ ...field, identifier: field.identifier }, airport, shown);
  expect(untouched.corrected).toEqual([]);
  expect(untouched.byHand).toEqual([]);
  expect(untouched.fromList).toContain('heading of 08/26 (by the places of its ends)');

  const [runway] = field.runways;
  const changed = originOf(
    {
      ...field,
      elevationM: 1610,
      runways:
        runway === undefined
          ? []
          : [
              { ...runway, lengthM: 1150 },
              { ...runway, listedId: null },
            ],
    },
    airport,
    shown,
  );
  expect(changed.corrected).toEqual([
    { what: 'elevation', listHas: '1600 m' },
    { what: 'length of 08/26', listHas: '1200 m' },
  ]);
  expect(changed.byHand).toEqual(['runway 08/26']);
});

test('the nearest station within 80 km stands for a field, and none beyond', () => {
  // A tenth of a degree of latitude is 11.1 km.
  const stations = [40.5, 40.2, 42].map((latitudeDeg) => ({ latitudeDeg, longitudeDeg: -105 }));
  expect(nearestStation(airport, stations)?.latitudeDeg).toBe(40.2);
  expect(nearestStation(airport, stations.slice(2))).toBeNull();
});
