import { expect, test } from 'vitest';
import { scenarioChangesSentence, wasWords } from '../../../shared-calc/wording/scenario-changes.ts';
import type { SeenVerdict, VerdictChange } from '../../../shared-calc/wording/verdict-changes.ts';

const change = (name: string, was: SeenVerdict['verdict'], is: SeenVerdict['verdict']): VerdictChange => ({
  id: name,
  name,
  was: { id: name, verdict: was, inShort: was, entriesMark: '' },
  is: { id: name, name, verdict: is, inShort: is, entriesMark: '' },
});

test('says how many changed and which, what is outside now first', () => {
  const changes = [
    change('Ines, 40 L', 'outside', 'inside'),
    change('Jonas, 60 L', 'inside', 'outside'),
    change('Jonas, full tanks', 'inside', 'outside'),
    change('Mara, 90 L', 'inside', 'does not fit'),
  ];
  expect(scenarioChangesSentence(changes, 20)).toBe(
    'Four of 20 scenarios changed verdict since you last looked, by a figure of the aeroplane or somebody’s mass. ' +
      '“Jonas, 60 L” and “Jonas, full tanks” are now outside (were inside). ' +
      '“Mara, 90 L” now asks for more fuel than fits (was inside). ' +
      '“Ines, 40 L” is now inside (was outside).',
  );
});

test('counts what is too much to name, and says nothing where nothing changed', () => {
  const many = Array.from({ length: 17 }, (_, i) => change(`Row ${String(i + 1)}`, 'inside', 'outside'));
  expect(scenarioChangesSentence(many, 320)).toMatch(
    /^17 of 320 scenarios .* “Row 1”, “Row 2”, “Row 3” and 14 more are now outside \(were inside\)\.$/,
  );
  expect(scenarioChangesSentence([], 320)).toBe('');
});

test('a cell says what it was', () => {
  expect(wasWords(change('', 'inside', 'outside'))).toBe('was inside');
  expect(wasWords(change('', 'not checked', 'inside'))).toBe('was not checked');
  expect(wasWords(change('', 'does not fit', 'inside'))).toBe('its fuel did not fit');
});
