import { describe, expect, test } from 'vitest';
import {
  seenNow,
  verdictChanges,
  verdictChangesSentence,
  type StandingVerdict,
} from '../../../shared-calc/wording/verdict-changes.ts';

const lakes: StandingVerdict = {
  id: 'lakes',
  name: 'To the lakes',
  verdict: 'inside',
  inShort: 'inside by 8 mm',
  entriesMark: 'a',
};
const alone: StandingVerdict = { ...lakes, id: 'alone', name: 'Alone', inShort: 'inside by 40 mm' };
const outside = { verdict: 'outside', inShort: 'outside by 4 mm' } as const;

test('a loading that is outside now though its own entries are the same is told with what it was', () => {
  const changes = verdictChanges([lakes, alone], [{ ...lakes, ...outside }, alone]);
  expect(changes.map(({ id }) => id)).toEqual(['lakes']);
  expect(verdictChangesSentence(changes)).toBe('“To the lakes” is now outside by 4 mm (was inside by 8 mm).');
});

test('its own change, a margin that only moves, a new loading and one that is gone are no news', () => {
  expect(
    verdictChanges(
      [lakes, alone],
      [
        { ...lakes, ...outside, entriesMark: 'b' },
        { ...lakes, ...outside, id: 'new' },
      ],
    ),
  ).toEqual([]);
  expect(verdictChanges([lakes], [{ ...lakes, inShort: 'inside by 2 mm' }])).toEqual([]);
});

test('several are told together, those outside first', () => {
  const before = [lakes, alone, { ...lakes, ...outside, id: 'out', name: 'Out' }];
  const after = [
    { ...lakes, ...outside },
    { ...alone, ...outside },
    { ...lakes, id: 'out', name: 'Out' },
  ];
  expect(verdictChangesSentence(verdictChanges(before, after))).toBe(
    '“To the lakes” and “Alone” are now outside. “Out” is now inside by 8 mm (was outside by 4 mm).',
  );
});

describe('what is kept as seen', () => {
  const at = (id: string, verdict: 'inside' | 'outside', entriesMark = 'a') => ({
    id,
    name: id,
    verdict,
    inShort: verdict,
    entriesMark,
  });
  const plain = ({ id, verdict, inShort, entriesMark }: ReturnType<typeof at>) => ({
    id,
    verdict,
    inShort,
    entriesMark,
  });

  test('a change stays to be told until it is looked at; what is new, touched or gone has none', () => {
    const seen = [at('changed', 'inside'), at('touched', 'inside'), at('gone', 'inside')].map(plain);
    const now = [at('changed', 'outside'), at('touched', 'outside', 'b'), at('new', 'outside')];
    const kept = seenNow(seen, now);
    expect(kept).toEqual(
      [at('changed', 'inside'), at('touched', 'outside', 'b'), at('new', 'outside')].map(plain),
    );
    // The same for as long as nothing else happens.
    expect(seenNow(kept, now)).toEqual(kept);
    expect(verdictChanges(kept, now).map(({ id }) => id)).toEqual(['changed']);
    expect(
      verdictChanges(
        seenNow(kept, now, (id) => id === 'changed'),
        now,
      ),
    ).toEqual([]);
  });
});
