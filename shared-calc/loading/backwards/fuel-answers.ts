import { withFuelL } from '../alter.ts';
import type { LoadingRecord } from '../records.ts';
import { reserveOf } from '../reserve.ts';
import type { NumberRange } from '../../numeric/ranges-not-negative.ts';
import type { Answer, SingleFound } from './answer.ts';
import { fuelRanges, longestFlight, type FuelParts } from './fuels.ts';
import { changed, roundedInto, waysTo, wayOf, type Subject } from './subject.ts';

/** A way to share fuel among the tanks that a person would think of. */
export interface Sharing {
  readonly parts: FuelParts;
  /** The one tank that is filled; null for all together. */
  readonly tank: string | null;
  readonly nowL: number;
}

/** All tanks in the parts in which they hold fuel now (by their size where they hold none), and each by itself. */
export function sharingsOf({ inputs }: Subject): Sharing[] {
  const { tanks } = inputs.aircraft;
  const nowL = tanks.map(({ id }) => inputs.loading.fuel.find(({ tankId }) => tankId === id)?.bestL ?? 0);
  const usableL = tanks.map(({ capacityL, unusableL }) => capacityL - unusableL);
  const sum = (each: readonly number[]) => each.reduce((a, b) => a + b, 0);
  const held = sum(nowL) > 0 ? nowL : usableL;
  const together: Sharing = {
    parts: held.map((litres) => litres / sum(held)),
    tank: tanks.length === 1 ? (tanks[0]?.name ?? null) : null,
    nowL: sum(nowL),
  };
  if (tanks.length === 0) return [];
  if (tanks.length === 1) return [together];
  const single = tanks.map(({ name }, i): Sharing => ({
    parts: tanks.map((_, j) => (i === j ? 1 : 0)),
    tank: name,
    nowL: nowL[i] ?? 0,
  }));
  return [together, ...single];
}

/** Fuel that keeps the flight inside, nearest to what is aboard now; empty where none does or what is there will do. */
export function fuelRemedies(subject: Subject): Answer[] {
  return sharingsOf(subject).flatMap((sharing) => {
    const wanted = nearestFuel(subject, sharing);
    return wanted === null ? [] : fuelAnswer(subject, wanted);
  });
}

/** A quantity to which the fuel of a sharing may go, and all those that would do. */
export interface NearestFuel {
  readonly sharing: Sharing;
  readonly ranges: readonly NumberRange[];
  readonly range: NumberRange;
  readonly end: 'from' | 'to';
  /** Litres between what is there now and that end. */
  readonly farL: number;
}

/** null where no quantity keeps the flight inside. */
export function nearestFuel(subject: Subject, sharing: Sharing): NearestFuel | null {
  const ranges = fuelRanges(subject.asked, sharing.parts);
  const nearest = nearestEnd(ranges, sharing.nowL);
  return nearest === null ? null : { sharing, ranges, ...nearest };
}

/** The answer with its ways: solved for nine in ten, which takes as long as some hundred flights. */
export function fuelAnswer(
  subject: Subject,
  { sharing, ranges, range, end }: NearestFuel,
): Answer<SingleFound>[] {
  const apply = applier(subject, sharing.parts);
  const ways = waysTo(subject, range, end, { quantity: 'volume', apply });
  const { tank, nowL } = sharing;
  return ways.length === 0 ? [] : [{ found: { kind: 'fuel', tank, ranges, nowL }, ways }];
}

/** All fuel quantities that are inside, and the longest flight among them. */
export function fuelRoom(subject: Subject): Answer[] {
  const [together] = sharingsOf(subject);
  if (together === undefined) return [];
  const { parts, tank, nowL } = together;
  const ranges = fuelRanges(subject.asked, parts);
  const apply = applier(subject, parts);
  const last = ranges.at(-1);
  const answers: Answer[] = [];
  if (last !== undefined)
    answers.push({
      found: { kind: 'fuel', tank, ranges, nowL },
      ways: waysTo(subject, last, 'to', { quantity: 'volume', apply }),
    });
  const longest = longestFlight(subject.asked, parts);
  if (longest !== null) {
    const litres = roundedInto(
      subject,
      longest.litres,
      { from: 0, to: longest.litres },
      'volume',
      'allowance',
    );
    const after = changed(subject, (copy) => {
      apply(copy, litres);
      const landByS = reserveOf(copy)?.landByS ?? 0;
      // Down to whole minutes, as it is read.
      copy.flight.landingAfterS = Math.max(0, Math.floor(landByS / 60 + 1e-9) * 60);
    });
    const landByS = after.flight.landingAfterS ?? 0;
    const way = landByS > 0 ? wayOf(subject, after, litres) : null;
    if (way !== null) answers.push({ found: { kind: 'longest flight', tank, landByS, nowL }, ways: [way] });
  }
  return answers;
}

function applier({ inputs }: Subject, parts: FuelParts): (copy: LoadingRecord, litres: number) => void {
  return (copy, litres) => {
    inputs.aircraft.tanks.forEach((tank, i) => {
      const part = parts[i] ?? 0;
      if (part > 0) withFuelL(copy, tank, part * litres);
    });
  };
}

/** The end of a range that lies nearest to a quantity outside all of them. */
function nearestEnd(
  ranges: readonly NumberRange[],
  nowL: number,
): Pick<NearestFuel, 'range' | 'end' | 'farL'> | null {
  let best: Pick<NearestFuel, 'range' | 'end' | 'farL'> | null = null;
  for (const range of ranges) {
    const end = nowL < range.from ? 'from' : 'to';
    const farL = Math.abs(nowL - range[end]);
    if (best === null || farL < best.farL) best = { range, end, farL };
  }
  return best;
}
