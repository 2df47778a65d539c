import type { LimitMargin, LoadingResult } from '../loading/assess.ts';
import { armLimitsAt } from '../loading/envelope.ts';
import { isOfCg } from '../loading/limits.ts';
import { pointAt } from '../loading/point.ts';
import { shownDuration } from '../units/duration-text.ts';
import { loadingReview, type LoadingReview } from './loading-review.ts';
import type { LoadingInputs } from '../loading/case-of.ts';
import { amount, limitName, placeOf, whenText, type LoadingUnits, isBrokenBetween } from './loading-parts.ts';
import { textOf } from './parts.ts';

/** What a cell of the review table says, all of it plain data: it crosses from a worker. */
export interface ReviewCell {
  readonly verdict: 'inside' | 'outside' | 'not checked' | 'does not fit';
  /** Said first, with the limit: "11 mm to the aft limit", "Outside the aft limit by 4 mm". */
  readonly lead: string;
  /** Where on the flight, or what else there is to it; '' where nothing is to be added. */
  readonly where: string;
  /** Outside only, inside a sentence: "the aft limit is met 1 h 52 min after take-off". */
  readonly met: string | null;
  /** Outside at neither take-off nor landing: what checking the two ends would not find. */
  readonly isHidden: boolean;
  /** The whole verdict on the loading, as its own sheet says it. */
  readonly whole: string;
  /** The margin that `lead` speaks of, as a share of its limits, by which cells compare; null without one. */
  readonly share: number | null;
  readonly limitId: string | null;
  readonly marginM: number | null;
  readonly marginKg: number | null;
  readonly afterTakeOffS: number | null;
  /** Over the flight, least and most place between forward (0) and aft limit (1); null without an envelope. */
  readonly span: { readonly from: number; readonly to: number } | null;
}

/** A cell's words with the review from which they come: its result is what the odds are drawn from. */
export interface JudgedCell {
  readonly cell: ReviewCell;
  readonly review: LoadingReview;
}

/** The loading of a cell, judged as on its own sheet: the limit met first where it is outside, else the least margin. */
export function judgedCell(inputs: LoadingInputs, units: LoadingUnits): JudgedCell {
  const review = loadingReview(inputs, units);
  return { cell: cellOf(review, units), review };
}

/** A cell whose fuel the tanks do not hold. */
export function doesNotFit(needed: string, usable: string): ReviewCell {
  return {
    ...withoutMargin,
    verdict: 'does not fit',
    lead: 'More fuel than fits',
    where: `${needed} of ${usable} usable`,
    whole: `${needed} would be needed; the tanks hold ${usable} of usable fuel.`,
  };
}

const withoutMargin = {
  met: null,
  isHidden: false,
  share: null,
  limitId: null,
  marginM: null,
  marginKg: null,
  afterTakeOffS: null,
  span: null,
} as const;

function cellOf(review: LoadingReview, units: LoadingUnits): ReviewCell {
  const { result, reserve, verdict } = review;
  const whole = textOf(review.sentences);
  if (result === null || verdict === 'not checked') {
    const why = review.sentences.slice(result === null ? 1 : 0, 2);
    return { ...withoutMargin, verdict: 'not checked', lead: 'Not checked', where: textOf(why), whole };
  }
  const span = spanOf(result);
  if (verdict === 'inside') {
    const { least } = result;
    if (least === null) return { ...withoutMargin, verdict, lead: 'Inside', where: '', whole, span };
    const place = least.worst === null ? '' : placeOf(least.worst, result);
    const lead = `${amount(least, 'margin', units)} to the ${limitName(least, units)}`;
    return { ...withoutMargin, verdict, lead, where: place, whole, span, ...figuresOf(least) };
  }
  const broken = result.margins.filter(({ met }) => !met).sort((a, b) => startsL(a) - startsL(b));
  const [first, ...others] = broken;
  if (first !== undefined) {
    const words = brokenWords(first, result, units);
    const more =
      others.length === 0
        ? ''
        : others.length === 1
          ? '; one more limit'
          : `; ${String(others.length)} more limits`;
    return {
      verdict,
      ...words,
      where: `${words.where}${more}`,
      isHidden: broken.every((margin) => isBrokenBetween(margin, result)),
      whole,
      span,
      ...figuresOf(first),
    };
  }
  const lasts = result.fuelEndsS;
  if (lasts !== null) {
    const where = `exhausted ${whenText(lasts)}`;
    return {
      ...withoutMargin,
      verdict,
      lead: 'Fuel may not last',
      where,
      met: 'the fuel may not last until the landing',
      whole,
      span,
    };
  }
  const landBy =
    reserve === null || reserve.landByS < 0
      ? 'the fuel does not hold it'
      : `land by ${shownDuration(reserve.landByS, 'plan')}`;
  return {
    ...withoutMargin,
    verdict,
    lead: 'Reserve not kept',
    where: landBy,
    met: 'the reserve is not kept',
    whole,
    span,
  };
}

/** When a limit is first broken, by litres burned; a place is broken all the way. */
function startsL({ limit, outside, worst }: LimitMargin): number {
  if ('loadedKg' in limit) return -1;
  return outside[0]?.fromL ?? worst?.burnedL ?? 0;
}

function brokenWords(
  margin: LimitMargin,
  result: LoadingResult,
  units: LoadingUnits,
): Pick<ReviewCell, 'lead' | 'where' | 'met'> {
  const { limit, outside, worst } = margin;
  const by = amount(margin, 'excess', units);
  const start = outside[0];
  const startsAtOnce = start === undefined || start.fromRamp || start.fromS < 60;
  const since =
    start?.fromRamp === true
      ? 'from the ramp'
      : startsAtOnce
        ? 'from take-off'
        : `met ${whenText(start.fromS)}`;
  if (isOfCg(limit)) {
    const name = limitName(margin, units);
    const isStretch = 'side' in limit || limit.phase === 'flight' || limit.phase === 'ramp';
    return {
      lead: `Outside the ${name} by ${by}`,
      where: isStretch ? since : worst === null ? '' : placeOf(worst, result),
      met: startsAtOnce || !isStretch ? `it is outside the ${name} by ${by}` : `the ${name} is ${since}`,
    };
  }
  if ('loadedKg' in limit) {
    const isLeast = limit.kind === 'station-least';
    const over = isLeast ? `${by} below its least` : `${by} over its limit`;
    return { lead: `${limit.name}: ${over}`, where: 'all the way', met: `${limit.name} is ${over}` };
  }
  if (limit.kind === 'left-right')
    return {
      lead: `Left and right fuel differ by ${by} too much`,
      where: since,
      met: `left and right fuel differ by ${by} too much`,
    };
  if (limit.kind === 'least') {
    const than = limit.isStated ? 'below the least mass' : 'lighter than the envelope';
    return {
      lead: `${than.charAt(0).toUpperCase()}${than.slice(1)} by ${by}`,
      where: since,
      met: startsAtOnce ? `it is ${than} by ${by}` : `it is ${than} from ${whenText(start.fromS)} on`,
    };
  }
  const tooHeavy = {
    ramp: 'too heavy on the ramp',
    'take-off': 'too heavy to take off',
    flight: 'above the envelope',
    landing: 'too heavy to land',
    'zero-fuel': 'too heavy without fuel',
  }[limit.phase];
  return {
    lead: `${tooHeavy.charAt(0).toUpperCase()}${tooHeavy.slice(1)} by ${by}`,
    where: limit.phase === 'flight' ? since : worst === null ? '' : placeOf(worst, result),
    met: `it is ${tooHeavy} by ${by}`,
  };
}

function figuresOf({ limit, margin, share, worst }: LimitMargin) {
  const isArm = isOfCg(limit);
  return {
    share,
    limitId: limit.id,
    marginM: isArm ? margin : null,
    marginKg: isArm ? null : margin,
    afterTakeOffS: worst?.afterTakeOffS ?? null,
  };
}

/** By every node of the flight and the two points where forward and aft margins are least. */
function spanOf(result: LoadingResult): ReviewCell['span'] {
  const sides = result.margins.filter(
    ({ limit }) => (limit.kind === 'forward' || limit.kind === 'aft') && limit.phase === 'flight',
  );
  const [side] = sides;
  if (side === undefined || !('envelope' in side.limit)) return null;
  const { envelope } = side.limit;
  const { model, path } = result;
  const nodes = Array.from({ length: path.nodes }, (_, node) => node).filter(
    (node) => node >= Math.max(0, path.takeOff),
  );
  const points = [
    ...nodes.map((node) => pointAt(model, path, node, 0)),
    ...sides.flatMap(({ worst }) => (worst === null ? [] : [worst])),
  ];
  const shares = points.map(({ massKg, armM }) => {
    const { forwardM, aftM } = armLimitsAt(envelope, massKg);
    return (armM - forwardM) / (aftM - forwardM);
  });
  return { from: Math.min(...shares), to: Math.max(...shares) };
}
