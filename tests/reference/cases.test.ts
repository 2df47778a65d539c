import { readFileSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { TOPICS, compare, everyCase, inputOf, textOf, type PublishedCase } from './cases.ts';

// The harness itself: a check that cannot fail is worth nothing.

const invented: PublishedCase = {
  id: 'X-001',
  topic: 'sun',
  title: 'invented for the harness',
  source: { title: 'none', edition: '', locator: '', url: '' },
  provenance: 'invented',
  recomputed: 'no',
  inputs: { height: { value: 10, unit: 'ft' }, report: 'KXYZ' },
  expected: {
    mass: { value: 10, unit: 'kg' },
    list: { value: [1, 2], unit: '' },
    rise: { value: '2019-03-20T11:28Z', unit: 'UTC' },
    none: { value: null, unit: 'degC' },
    auto: { value: true, unit: '' },
  },
  tolerance: {
    mass: { abs: 0.5 },
    list: { abs: 0.1, each: true },
    rise: { minutes: 2 },
    none: { exact: true },
    auto: { exact: true },
  },
  tolerance_why: '',
  note: null,
};
const riseS = Date.UTC(2019, 2, 20, 11, 29) / 1000;
const good = { mass: 10.25, list: [1, 2.05], rise: riseS, none: null, auto: true };

test('figures inside their tolerances pass, and the largest share of a tolerance is kept', () => {
  const verdict = compare(invented, good);
  expect(verdict.failures).toEqual([]);
  expect(verdict.largestShare).toBeCloseTo(0.5, 9);
});

test.each([
  ['a figure beyond its tolerance', { ...good, mass: 10.5001 }, 'mass is 10.5001 kg; published 10'],
  ['a figure that is not a number', { ...good, mass: NaN }, 'mass is NaN'],
  ['one element of a list', { ...good, list: [1, 2.2] }, 'list[1] is 2.2'],
  ['a list of another length', { ...good, list: [1] }, 'list is [1]'],
  ['a time too late', { ...good, rise: riseS + 61 }, 'rise is'],
  ['a time that is missing', { ...good, rise: null }, 'rise is NaN min'],
  ['a value where the source has none', { ...good, none: 0 }, 'none is 0; published null'],
  ['a flag', { ...good, auto: false }, 'auto is false; published true'],
  ['a misspelt name', { ...good, mas: 1 }, 'mas is not a published name'],
])('%s fails', (_, actual, sentence) => {
  const { failures } = compare(invented, actual);
  expect(failures).toHaveLength(1);
  expect(failures[0]).toContain(sentence);
});

test('a name left out fails', () => {
  expect(compare(invented, { mass: 10, list: [1, 2], rise: riseS, none: null }).failures).toEqual([
    'auto was not computed',
  ]);
});

test('an input in another unit than the test believes is refused', () => {
  expect(inputOf(invented, 'height', 'ft')).toBe(10);
  expect(() => inputOf(invented, 'height', 'm')).toThrow('prints height in ft, not in m');
  expect(textOf(invented, 'report')).toBe('KXYZ');
});

test('each topic of the published file has exactly one test file that computes all of its cases', () => {
  const folder = new URL('./', import.meta.url);
  const users = readdirSync(folder)
    .filter((name) => name.endsWith('.test.ts') && name !== 'cases.test.ts')
    .map((name) => readFileSync(new URL(name, folder), 'utf8'));
  const counted = TOPICS.map((topic) => ({
    topic,
    files: users.filter((text) => text.includes(`publishedChecks('${topic}'`)).length,
  }));
  expect(counted).toEqual(TOPICS.map((topic) => ({ topic, files: 1 })));
  expect([...new Set(everyCase().map((one) => one.topic))].sort()).toEqual([...TOPICS].sort());
  expect(everyCase()).toHaveLength(187);
});
