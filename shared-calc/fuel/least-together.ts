import { InputProblem, requireRange } from '../problem.ts';
import type { GaugeReading } from './fill-run.ts';
import type { GaugeCurve } from './gauge-curve.ts';
import { scaleMarks, type GaugeScale } from './gauge-scale.ts';
import { pairedRefits, type KeptRefits } from './kept-refits.ts';
import { fuelAtReading, type ReadingPrecision } from './readout.ts';
import { drawsOf, isDoubtful, thinned, totalFuel, type Draws, type ReadTank } from './total-fuel.ts';

/** A tank whose reading is asked for. */
export interface ScaledTank {
  readonly curve: GaugeCurve;
  readonly refits: KeptRefits | null;
  readonly scale: GaugeScale;
}

/** With the one at least at `lead`, the other must read at least `other`. */
export interface LeastPair {
  readonly lead: { readonly reading: GaugeReading; readonly text: string };
  readonly other: { readonly reading: GaugeReading; readonly text: string };
}

/**
 * Which pairs of readings suffice for a quantity in all tanks together: the total of two gauges asked backwards. From
 * the lowest mark of the first tank that can be enough at all, up to the first at which the other may read empty; where
 * a higher mark of the first asks no less of the other, it is left out. Both figures are of marks of the scales.
 * @param usableL usable litres in all tanks together, 0 to 3000
 * @param rest    further tanks, each at its reading
 * @returns the pairs, the first tank's marks rising; none where even both at the full stop do not promise so much
 * @throws RangeProblem naming usableL, or for a reading of `rest` outside its scale
 */
export function leastPairs(
  lead: ScaledTank,
  other: ScaledTank,
  rest: readonly ReadTank[],
  usableL: number,
  precision: ReadingPrecision,
): LeastPair[] {
  requireRange('usableL', usableL, 0, 3000, 'L');
  const [leadMarks, otherMarks] = [scaleMarks(lead.scale), scaleMarks(other.scale)];
  const enough = enoughTogether(lead, other, rest, precision);
  const pairs: LeastPair[] = [];
  // As the one rises the other may fall, so that one walk down its marks serves all.
  let at = otherMarks.length - 1;
  for (const leadMark of leadMarks) {
    if (!enough(leadMark.reading, otherMarks[at]?.reading ?? { at: 'fullStop' }, usableL)) continue;
    while (at > 0 && enough(leadMark.reading, otherMarks[at - 1]?.reading ?? { at: 'emptyStop' }, usableL))
      at--;
    const otherMark = otherMarks[at];
    if (otherMark === undefined) throw new InputProblem('scale', 'has no marks');
    if (otherMark.text !== pairs.at(-1)?.other.text) pairs.push({ lead: leadMark, other: otherMark });
    if (at === 0) break;
  }
  return pairs;
}

/**
 * Whether two readings promise a quantity, as `totalFuel` has it: at most one in twenty of the sums over the kept curves
 * lies below. Counting them is quick; the curves at a mark are looked up once.
 */
function enoughTogether(
  lead: ScaledTank,
  other: ScaledTank,
  rest: readonly ReadTank[],
  precision: ReadingPrecision,
): (leadAt: GaugeReading, otherAt: GaugeReading, usableL: number) => boolean {
  const drawsAt = (tank: ScaledTank) => {
    const known = new Map<string, Draws | null>();
    return (reading: GaugeReading) => {
      const key = JSON.stringify(reading);
      let found = known.get(key);
      if (found === undefined) known.set(key, (found = drawsOf({ ...tank, reading }, precision)));
      return found;
    };
  };
  const [leadDraws, otherDraws] = [drawsAt(lead), drawsAt(other)];
  const restDraws = rest.map((tank) => drawsOf(tank, precision));
  const pairing = (of: KeptRefits | null) =>
    lead.refits === null || of === null ? [] : pairedRefits(lead.refits, of);
  const otherPairs = pairing(other.refits);
  const restPairs = rest.map(({ refits }) => pairing(refits));
  return (leadAt, otherAt, usableL) => {
    // A billionth of the tanks, as every limit that is met exactly.
    const enoughL = usableL - 1e-9 * (lead.curve.usableCapacityL + other.curve.usableCapacityL);
    const drawn = [leadDraws(leadAt), otherDraws(otherAt), ...restDraws];
    const joint = drawn.filter((each) => each !== null);
    if (joint.length < drawn.length || !isDoubtful(joint, 'low')) {
      const tanks = [{ ...lead, reading: leadAt }, { ...other, reading: otherAt }, ...rest];
      // The tanks' own figures, added.
      return tanks.length === 2
        ? planL(tanks, precision) >= enoughL
        : totalFuel(tanks, precision).planningL >= enoughL;
    }
    return fewBelow(joint, [otherPairs, ...restPairs], enoughL);
  };
}

function planL(tanks: readonly ReadTank[], precision: ReadingPrecision): number {
  return tanks.reduce(
    (sum, { curve, reading }) => sum + fuelAtReading(curve, reading, precision).planningL,
    0,
  );
}

/** Whether the 5 % quantile of the sums reaches `leastL`: at most one in twenty may lie below it. */
function fewBelow(
  [lead, other, ...rest]: readonly Draws[],
  pairs: readonly number[][],
  leastL: number,
): boolean {
  if (lead === undefined || other === undefined) return false;
  const count = Math.min(...[lead, other, ...rest].map(({ refits }) => refits.volumesL.length));
  let below = 0;
  let sums = 0;
  for (let refit = 0; refit < count; refit++) {
    let together: readonly number[] = lead.low[refit] ?? [];
    rest.forEach((each, index) => {
      const more = each.low[pairs[index + 1]?.[refit] ?? refit] ?? [];
      together = thinned(together.flatMap((sumL) => more.map((valueL) => sumL + valueL)));
    });
    const last = other.low[pairs[0]?.[refit] ?? refit] ?? [];
    sums += together.length * last.length;
    for (const sumL of together) for (const valueL of last) if (sumL + valueL < leastL) below += 1;
  }
  return below <= Math.floor(0.05 * (sums - 1));
}
