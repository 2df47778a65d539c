import { describe, expect, test } from 'vitest';
import { theilSen } from '../../../shared-calc/numeric/theil-sen.ts';

// Expected figures: scipy.stats.theilslopes(y, x, confidence) of SciPy 1.17.1, run once on the same numbers.
const years = Array.from({ length: 11 }, (_, i) => 2015 + i);

describe('the robust slope and its band', () => {
  test('are SciPy’s for eleven years that rise', () => {
    const { slope, low, high } = theilSen(
      years,
      [2310, 2335, 2301, 2360, 2342, 2371, 2330, 2390, 2365, 2402, 2384],
    );
    expect(slope).toBeCloseTo(7.75, 12);
    expect(low).toBeCloseTo(3.3333333333333335, 12);
    expect(high).toBeCloseTo(12.5, 12);
  });
  test('are SciPy’s with ties and one wild year, at two confidences', () => {
    const y = [2310, 2335, 2301, 2335, 2342, 2310, 2330, 2301, 2342, 2335, 2950];
    expect(theilSen(years, y)).toEqual({ slope: 3, low: expect.closeTo(-1.2857142857142858, 12), high: 20 });
    expect(theilSen(years, y, 0.9)).toEqual({
      slope: 3,
      low: 0,
      high: expect.closeTo(10.666666666666666, 12),
    });
  });
  test('are SciPy’s where places repeat', () => {
    const { slope, low, high } = theilSen(
      [1, 1, 2, 4, 4, 7, 9, 11],
      [3.2, 2.9, 4.0, 5.5, 5.5, 8.1, 9.7, 12.4],
    );
    expect(slope).toBeCloseTo(0.8583333333333332, 12);
    expect(low).toBeCloseTo(0.7999999999999998, 12);
    expect(high).toBeCloseTo(0.9857142857142858, 12);
  });
});
