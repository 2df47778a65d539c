import { expect, test } from 'vitest';
import { curveResiduals, flagRows } from '../../../shared-calc/fuel/row-flags.ts';
import { curveOf, filling, LINEAR, rows, TANK, WITH_DEAD_ZONE } from './fill-tests.ts';

test('a sound test has no flags', () => {
  expect(flagRows([WITH_DEAD_ZONE, LINEAR], TANK)).toEqual([]);
});

test('a reading that falls while filling is named with how far it fell', () => {
  const flags = flagRows([filling([5, 0.25], [5, 0.5], [5, 0.375], [5, 0.625])], TANK);
  expect(flags).toEqual([{ runIndex: 0, rowIndex: 2, kind: 'fellWhileFilling', byRatio: 0.125 }]);
});

test('a reading that is set aside is told once and says nothing about the next', () => {
  const run = filling([5, 0.25], [5, 0.9], [5, 0.5]);
  const aside = { ...run, rows: run.rows.map((row, i) => ({ ...row, setAside: i === 1 })) };
  expect(flagRows([run], TANK)).toHaveLength(1);
  expect(flagRows([aside], TANK)).toEqual([]);
});

test('a reading that rises while draining is named', () => {
  const flags = flagRows(
    [
      {
        direction: 'draining',
        start: { from: 'known', usableL: 40 },
        rows: rows([0, 0.5], [5, 0.75], [5, 0.25]),
      },
    ],
    TANK,
  );
  expect(flags).toEqual([{ runIndex: 0, rowIndex: 1, kind: 'roseWhileDraining', byRatio: 0.25 }]);
});

test('one pour of litres typed as gallons is recognised by its size', () => {
  // Six pours of 10 L, one of them taken as gallons: 37.854 L. The tank holds 60 L, the typed total is 87.9 L.
  const flags = flagRows(
    [filling([10, 0.1], [37.854, 0.3], [10, 0.5], [10, 0.6], [10, 0.8], [10, 0.9])],
    TANK,
  );
  expect(flags.map((flag) => [flag.rowIndex, flag.kind, 'likely' in flag ? flag.likely : ''])).toEqual([
    [3, 'aboveCapacity', 'litresTypedAsGallons'],
    [4, 'aboveCapacity', 'litresTypedAsGallons'],
    [5, 'aboveCapacity', 'litresTypedAsGallons'],
  ]);
});

test('one usual pour too many looks like a pour typed twice', () => {
  const flags = flagRows([filling([20, 0.3], [20, 0.6], [20, 0.9], [20, 'F'])], TANK);
  expect(flags).toEqual([
    {
      runIndex: 0,
      rowIndex: 3,
      kind: 'aboveCapacity',
      usableL: 80,
      excessL: 20,
      likely: 'pourTypedTwiceOrStartTooHigh',
    },
  ]);
});

test('a litre too much is within what containers are good for, and a tank filled exactly is no flag', () => {
  expect(flagRows([filling([30, 0.5], [31, 'F'])], TANK)).toEqual([
    {
      runIndex: 0,
      rowIndex: 1,
      kind: 'aboveCapacity',
      usableL: 61,
      excessL: 1,
      likely: 'containersOrStatedCapacity',
    },
  ]);
  expect(flagRows([filling([30, 0.5], [30, 'F'])], TANK)).toEqual([]);
});

test('a full needle with little poured asks for a forgotten pour or for gallons', () => {
  // 16 typed as litres is 60.6 L if they were gallons: just what the tank holds.
  expect(flagRows([filling([8, 0.5], [8, 'F'])], TANK)).toMatchObject([
    { kind: 'fullFarBelowCapacity', likely: 'gallonsTypedAsLitres' },
  ]);
  expect(flagRows([filling([14, 0.5], [14, 'F'])], TANK)).toMatchObject([
    { kind: 'fullFarBelowCapacity', likely: 'pourForgotten' },
  ]);
});

test('more drained than was there, and a reading off the scale, are named', () => {
  const drained = flagRows(
    [{ direction: 'draining', start: { from: 'known', usableL: 10 }, rows: rows([5, 0.2], [8, 'E']) }],
    TANK,
  );
  expect(drained).toEqual([{ runIndex: 0, rowIndex: 1, kind: 'belowEmptySump', usableL: -3 }]);
  expect(flagRows([filling([5, 1.2])], TANK)).toEqual([
    { runIndex: 0, rowIndex: 0, kind: 'outsideScale', positionRatio: 1.2 },
  ]);
});

test('a residual is what the tank held beyond the curve, and none inside a dead zone', () => {
  const runs = [filling([10, 0.2], [10, 0.4], [4, 0.3], [6, 0.5])];
  // By hand: 0.4 at 20 L and 0.3 at 24 L pool to 22 L.
  expect(curveResiduals(curveOf(runs, 0.05), runs, TANK).map((one) => one.residualL)).toEqual([0, -2, 2, 0]);
  const held = curveResiduals(curveOf([WITH_DEAD_ZONE], 0.125), [WITH_DEAD_ZONE], TANK);
  expect(held.map((one) => one.residualL)).toEqual(held.map(() => 0));
});
