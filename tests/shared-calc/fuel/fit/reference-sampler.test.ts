import { expect, test } from 'vitest';
import { referenceTanks } from './reference-tanks.ts';
import { compareWithSampler } from './sampler-study.ts';

// A second or two each on a quiet machine; all ten tanks, with more draws, are compared by npm run soak.
test.each(['tank-05', 'tank-09', 'tank-10'])(
  'over %s the curves agree with a sampler on the exact likelihood, written apart',
  { timeout: 60_000 },
  (id) => {
    const tank = referenceTanks().find((each) => each.id === id);
    if (tank === undefined) throw new Error(`no ${id}`);
    const { productRatio, numpyRatio } = compareWithSampler(tank, 16, 120);
    expect(productRatio).toBeLessThan(0.12);
    // The sampler itself against another one, in another language: some two thousand draws, not independent ones,
    // leave about 5 % of the band's width as noise in its ends.
    expect(numpyRatio).toBeLessThan(0.1);
  },
);
