import { expect, test } from 'vitest';
import { flagRun } from '../../../shared-calc/fuel/run-flags.ts';
import { filling, LINEAR, rows, TANK, WITH_DEAD_ZONE } from './fill-tests.ts';

// What counts as odd is common practice, no source; the figures of each case are worked out by hand.
const tenths = { resolutionRatio: 0.1, endsAt: null } as const;
const toTheBrim = { resolutionRatio: 0.1, endsAt: 'brim' } as const;

test('a sound run is not flagged, a dead zone neither', () => {
  expect(flagRun(LINEAR, TANK, toTheBrim)).toEqual([]);
  expect(flagRun(WITH_DEAD_ZONE, TANK, { resolutionRatio: 0.125, endsAt: 'gaugeStopped' })).toEqual([]);
});

test('a gauge whose readings all fall while fuel goes in is told once, at the first of them', () => {
  const run = filling([6, 0.9], [6, 0.8], [6, 0.7], [6, 0.6]);
  expect(flagRun(run, TANK, tenths)).toEqual([{ rowIndex: 1, kind: 'runsBackwards', direction: 'filling' }]);
  const drained = {
    direction: 'draining' as const,
    start: { from: 'known' as const, usableL: 40 },
    rows: rows([5, 0.1], [5, 0.2], [5, 0.4], [5, 0.5]),
  };
  expect(flagRun(drained, TANK, tenths)).toEqual([
    { rowIndex: 1, kind: 'runsBackwards', direction: 'draining' },
  ]);
});

test('one reading that falls does not make a gauge run backwards', () => {
  expect(flagRun(filling([6, 0.1], [6, 0.3], [6, 0.2], [6, 0.4]), TANK, tenths)).toEqual([]);
});

test('a needle that leaps over three forgotten pours is flagged where it leapt', () => {
  // Usual is a tenth for 6 L; here it went 0.4, so three pours of 6 L are missing.
  const run = filling([6, 0.1], [6, 0.2], [6, 0.6], [6, 0.7], [6, 0.8], [6, 0.9]);
  const [flag, ...others] = flagRun(run, TANK, tenths);
  expect(others).toEqual([]);
  expect(flag).toMatchObject({ kind: 'leapt', rowIndex: 2 });
  if (flag?.kind !== 'leapt') return;
  expect(flag.movedRatio).toBeCloseTo(0.4, 12);
  expect(flag.usualRatio).toBeCloseTo(0.1, 12);
});

test('a steep stretch of a sound gauge is no leap: its neighbours are as steep', () => {
  const run = filling([6, 0.1], [6, 0.15], [6, 0.2], [6, 0.45], [6, 0.7], [6, 0.75]);
  expect(flagRun(run, TANK, { resolutionRatio: 0.05, endsAt: null })).toEqual([]);
});

test('a brim one pour short of the capacity asks for the forgotten pour', () => {
  // Nine pours of 6 L are 54 of 60 L: one pour is missing.
  const run = filling(...[0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8].map((at): [number, number] => [6, at]), [
    6,
    'F',
  ]);
  expect(flagRun(run, TANK, toTheBrim)).toEqual([
    { rowIndex: 8, kind: 'brimBelowCapacity', usableL: 54, missingL: 6, likely: 'pourForgotten' },
  ]);
});

test('a brim short by part of a pour asks for the start and the containers, three in a hundred for nothing', () => {
  expect(flagRun(filling([20, 0.4], [20, 0.8], [13, 'F']), TANK, toTheBrim)).toMatchObject([
    { kind: 'brimBelowCapacity', missingL: 7, likely: 'startOrContainers' },
  ]);
  expect(flagRun(filling([20, 0.4], [20, 0.8], [18.2, 'F']), TANK, toTheBrim)).toEqual([]);
});

test('where most readings went the other way, none is said to have gone too far', () => {
  // Down, down, down and once up by four tenths: nothing here says what is usual.
  const run = filling([5, 0.5], [5, 0.4], [5, 0.3], [5, 0.7], [5, 0.6], [5, 0.5]);
  expect(flagRun(run, TANK, tenths)).toEqual([]);
});
