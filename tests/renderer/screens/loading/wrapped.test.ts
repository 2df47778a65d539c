import { expect, test } from 'vitest';
import { cutTo, wrapped } from '../../../../renderer/screens/loading/wrapped.ts';
import { listWords } from '../../../../shared-calc/wording/list-words.ts';

const byLetters = (text: string) => text.length;

test('a text breaks at blanks where it no longer fits, and loses none of its words', () => {
  expect(wrapped('left outboard wing tank empty', 15, byLetters)).toEqual([
    'left outboard',
    'wing tank empty',
  ]);
  expect(wrapped('landing', 15, byLetters)).toEqual(['landing']);
  expect(wrapped('unbreakableword and more', 8, byLetters)).toEqual(['unbreakableword', 'and more']);
});

test('a few names are all listed, many are cut short with their count', () => {
  expect(listWords([])).toBe('');
  expect(listWords(['a'])).toBe('a');
  expect(listWords(['a', 'b', 'c'])).toBe('a, b and c');
  expect(listWords(['a', 'b', 'c', 'd', 'e'])).toBe('a, b, c, d and e');
  expect(listWords(['a', 'b', 'c', 'd', 'e', 'f'])).toBe('a, b, c, d and 2 more');
});

test('a name that is too long is cut at the room there is, one that fits is not', () => {
  expect(cutTo('To the lakes', 12, byLetters)).toBe('To the lakes');
  expect(cutTo('To the lakes with baggage', 12, byLetters)).toBe('To the lake…');
  expect(cutTo('To the lakes', 8, byLetters)).toBe('To the…');
  expect(cutTo('Älpler', 1, byLetters)).toBe('Ä…');
});
