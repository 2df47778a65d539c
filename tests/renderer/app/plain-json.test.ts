import { expect, test } from 'vitest';
import { plainJson } from '../../../renderer/app/plain-json.ts';

test('what the window sends arrives as it was', () => {
  const input = { massKg: 81.6, note: 'ä "q"', list: [1, null, true, { a: 'b' }], left: undefined };
  expect(JSON.parse(plainJson(input))).toEqual({
    massKg: 81.6,
    note: 'ä "q"',
    list: [1, null, true, { a: 'b' }],
  });
});

test('the same object in two places is no circle', () => {
  const tank = { armM: 0.24 };
  expect(plainJson([tank, { tank }])).toBe('[{"armM":0.24},{"tank":{"armM":0.24}}]');
});

class Weighing {
  massKg = 300;
}
const circle: { inner?: unknown } = {};
circle.inner = { outer: circle };

// JSON itself turns the first three into null and drops or empties the others without a word.
test.each([
  ['a figure that is none', { a: [{ massKg: Number.NaN }] }, 'a.0.massKg is NaN'],
  ['an endless figure', { armM: Infinity }, 'armM is Infinity'],
  ['an endless negative figure', -Infinity, 'The input is -Infinity'],
  ['a function', { save: () => 1 }, 'save is a function'],
  ['a symbol', { key: Symbol('x') }, 'key is a symbol'],
  ['a large whole number', { count: 1n }, 'count is a bigint'],
  ['a date', { on: new Date(0) }, 'on is a Date'],
  ['a map', { fuel: new Map([['left', 1]]) }, 'fuel is a Map'],
  ['an object of a class', { empty: new Weighing() }, 'empty is a Weighing'],
  ['a circle', circle, 'inner.outer is a circle'],
])('%s is refused with its place', (_, input, sentence) => {
  expect(() => plainJson(input)).toThrow(`${sentence}, which cannot be sent. Nothing was changed.`);
});
