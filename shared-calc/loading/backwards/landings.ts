import type { NumberRange } from '../../numeric/ranges-not-negative.ts';
import { reserveOf } from '../reserve.ts';
import { densest } from './fuels.ts';
import { flightShareOf, type Asked } from './kept.ts';
import { keptRanges } from './kept-ranges.ts';

/**
 * Landing times, seconds after take-off, at which every limit for landing is kept, from take-off until the reserve would
 * be touched. The earliest is the start of the first range. Limits of other parts of the flight are not asked.
 * @throws RangeProblem, InputProblem as loadingModel
 */
export function landingRanges(asked: Asked): NumberRange[] {
  const { loading, reserveS } = asked;
  const { fuel, flight, burn } = loading;
  const reserve = reserveOf({ fuel: [...fuel], flight: { ...flight, reserveMin: reserveS / 60 } });
  if (reserve === null || reserve.landByS < 0) return [];
  const climbLPerH = flight.climbMin > 0 ? (flight.climbL / flight.climbMin) * 60 : 0;
  const flowLPerH = Math.max(flight.cruiseLPerH, climbLPerH, burn.returnLine?.pumpLPerH ?? 0);
  return keptRanges({
    at: (landingAfterS) => ({ ...asked, loading: { ...loading, flight: { ...flight, landingAfterS } } }),
    from: 0,
    to: reserve.landByS,
    // With a return line as much goes into one tank as comes out of another.
    kgPerUnit: (2 * densest(asked) * flowLPerH) / 3600,
    shareOf: ({ result }) =>
      result.margins.reduce(
        (least, margin) =>
          'phase' in margin.limit && margin.limit.phase === 'landing'
            ? Math.min(least, flightShareOf(margin))
            : least,
        Infinity,
      ),
  });
}
