import type { LimitMargin, LoadingResult } from '../loading/assess.ts';
import {
  isOfCg,
  type EnvelopeLimit,
  type LateralLimit,
  type MassLimit,
  type PlaceLimit,
} from '../loading/limits.ts';
import { shownDuration } from '../units/duration-text.ts';
import { shown } from '../units/shown.ts';
import {
  amount,
  isBrokenBetween,
  limitMass,
  limitName,
  placeOf,
  pointOf,
  stretches,
  tankName,
  whenText,
  type LoadingUnits,
} from './loading-parts.ts';
import { plain, strong, type Part, type Sentence } from './parts.ts';

/** A verdict in words: its first sentence is the answer, its one strong part what is to be seen first. */
export interface LoadingVerdict {
  readonly verdict: 'inside' | 'outside' | 'not checked';
  readonly sentences: readonly Sentence[];
  /** For a list of contents: "inside by 11 mm", "outside by 4 mm", "not checked". */
  readonly inShort: string;
}

/**
 * The verdict on a loading, as sentences.
 *
 * Every limit that is broken is said, the CG first, then masses, places and fuel. Inside, the least margin is given
 * with its place. Figures round to the safe side of their question. Whatever the result is, that the aeroplane is
 * too heavy to land for a while is added.
 * @param units in which the person reads masses and arms
 */
export function loadingVerdict(result: LoadingResult, units: LoadingUnits): LoadingVerdict {
  const broken = brokenSentences(result, units);
  const unchecked = uncheckedSentences(result);
  const extra = [...heavyToLand(result, units), ...fuelLost(result)];
  if (broken.length > 0) {
    const sentences = [...broken, [plain('Do not depart loaded like this.')], ...onlyInBetween(result)];
    return {
      verdict: 'outside',
      sentences: onceStrong([...sentences, ...unchecked, ...extra]),
      inShort: outsideInShort(result, units),
    };
  }
  if (unchecked.length > 0) {
    return {
      verdict: 'not checked',
      sentences: onceStrong([...unchecked, ...extra]),
      inShort: 'not checked',
    };
  }
  const inside = [strongFirst('Inside all limits', ' from ramp until usable fuel is exhausted.')];
  const least = result.least === null ? [] : [leastMargin(result.least, result, units)];
  return {
    verdict: 'inside',
    // Inside, the margin is what is to be seen first.
    sentences: onceStrong(
      [...least, ...inside].length > 1 ? [weak(inside[0] ?? []), ...least, ...extra] : [...inside, ...extra],
    ),
    inShort: result.least === null ? 'inside' : `inside by ${amount(result.least, 'margin', units)}`,
  };
}

function strongFirst(first: string, rest: string): Sentence {
  return [strong(first), plain(rest)];
}

function weak(sentence: Sentence): Sentence {
  return sentence.map((part) => plain(part.text));
}

/** Only the first strong part of an answer stays strong. */
function onceStrong(sentences: readonly Sentence[]): Sentence[] {
  let seen = false;
  return sentences.map((sentence) =>
    sentence.map((part): Part => {
      const keep = part.strong && !seen;
      seen ||= part.strong;
      return { text: part.text, strong: keep };
    }),
  );
}

/** "Least margin 11 mm to the aft limit, at landing." The figure is strong. */
export function leastMargin(least: LimitMargin, result: LoadingResult, units: LoadingUnits): Sentence {
  const place = least.worst === null ? '' : `, ${placeOf(least.worst, result)}`;
  return [
    plain('Least margin '),
    strong(amount(least, 'margin', units)),
    plain(` to the ${limitName(least, units)}${place}.`),
  ];
}

function brokenSentences(result: LoadingResult, units: LoadingUnits): Sentence[] {
  const broken = result.margins.filter((m) => !m.met);
  const sentences: Sentence[] = [];
  for (const margin of broken)
    if (isOfCg(margin.limit)) sentences.push(outsideCg(margin, margin.limit, result, units));
  for (const margin of broken) {
    if ('phase' in margin.limit && !('envelope' in margin.limit))
      sentences.push(overMass(margin, margin.limit, result, units));
  }
  for (const margin of broken)
    if ('loadedKg' in margin.limit) sentences.push(overPlace(margin, margin.limit, units));
  for (const margin of broken) {
    if (margin.limit.kind !== 'left-right') continue;
    const by = `${amount(margin, 'excess', units)} more than allowed (${limitMass(margin.limit.limitKg, units)})`;
    sentences.push(
      strongFirst('Left and right fuel', ` differ by up to ${by}, ${stretches(margin.outside)}.`),
    );
  }
  if (result.fuelEndsS !== null) sentences.push(fuelTooShort(result, result.fuelEndsS));
  return sentences;
}

function outsideCg(
  margin: LimitMargin,
  limit: EnvelopeLimit | LateralLimit,
  result: LoadingResult,
  units: LoadingUnits,
): Sentence {
  const by = amount(margin, 'excess', units);
  const where =
    'side' in limit || limit.phase === 'flight' || limit.phase === 'ramp'
      ? stretches(margin.outside)
      : pointOf(limit.phase, result);
  return strongFirst(`Outside the ${limitName(margin, units)}`, ` by up to ${by}, ${where}.`);
}

function overMass(
  margin: LimitMargin,
  limit: MassLimit,
  result: LoadingResult,
  units: LoadingUnits,
): Sentence {
  const by = amount(margin, 'excess', units);
  const figure = limitMass(limit.limitKg, units);
  if (limit.kind === 'least') {
    const where =
      limit.phase === 'flight' || limit.phase === 'ramp'
        ? stretches(margin.outside)
        : pointOf(limit.phase, result);
    if (limit.isStated) return strongFirst('Below the least mass', ` (${figure}) by up to ${by}, ${where}.`);
    const why = 'the manual gives no limits there';
    return strongFirst('Lighter than the envelope', ` (from ${figure}) by up to ${by}, ${where}: ${why}.`);
  }
  switch (limit.phase) {
    case 'ramp':
      return strongFirst('Too heavy on the ramp', ` (${figure}) by ${by}.`);
    case 'take-off':
      return strongFirst('Too heavy to take off', ` (${figure}) by ${by}.`);
    case 'flight':
      return strongFirst('Above the envelope', ` (${figure}) by up to ${by}, ${stretches(margin.outside)}.`);
    case 'landing':
      return strongFirst(`Too heavy to land`, ` (${figure}) by ${by}, ${pointOf('landing', result)}.`);
    case 'zero-fuel':
      return strongFirst('Zero-fuel mass too high', ` (${figure}) by ${by}.`);
  }
}

function overPlace(margin: LimitMargin, limit: PlaceLimit, units: LoadingUnits): Sentence {
  const by = amount(margin, 'excess', units);
  const loaded = shown(
    limit.loadedKg,
    'mass',
    units.mass,
    limit.kind === 'station-least' ? 'margin' : 'load',
  );
  const figure = limitMass(limit.limitKg, units);
  if (limit.kind === 'station-least')
    return strongFirst(limit.name, `: ${loaded}, ${by} below its least of ${figure}.`);
  const together = limit.kind === 'group-most' ? ' together' : '';
  return strongFirst(`${limit.name}${together}`, `: ${loaded}, ${by} over the limit of ${figure}.`);
}

function fuelTooShort(result: LoadingResult, endsS: number): Sentence {
  const planned = whenText(result.model.plan.landingS);
  return strongFirst(
    'Fuel may not last',
    `: it can be exhausted ${whenText(endsS)}; landing is planned ${planned}.`,
  );
}

/** Said where the CG is outside between take-off and landing only, and nothing else is wrong. */
function onlyInBetween(result: LoadingResult): Sentence[] {
  const broken = result.margins.filter((m) => !m.met);
  const hidden = broken.every((margin) => isBrokenBetween(margin, result));
  if (!hidden || result.fuelEndsS !== null) return [];
  return [[plain('Checking take-off and landing alone would not show it.')]];
}

function uncheckedSentences(result: LoadingResult): Sentence[] {
  return result.unchecked.map((what) =>
    what === 'CG'
      ? strongFirst('No verdict on the CG', ': no envelope for the flight has been entered.')
      : strongFirst('No verdict on the take-off mass', ': no maximum has been entered.'),
  );
}

function heavyToLand(result: LoadingResult, units: LoadingUnits): Sentence[] {
  const untilS = result.tooHeavyToLandUntilS;
  if (untilS === null) return [];
  const limits = result.margins.flatMap(({ limit }) =>
    limit.kind === 'most' && limit.phase === 'landing' ? [limit.limitKg] : [],
  );
  const figure = limitMass(Math.min(...limits), units);
  const until =
    result.exhausted.afterTakeOffS <= untilS + 1e-6
      ? 'usable fuel is exhausted'
      : `${shownDuration(untilS, 'until inside')} after take-off`;
  return [[plain(`Too heavy to land (${figure}) until ${until}.`)]];
}

function fuelLost(result: LoadingResult): Sentence[] {
  if (result.fuelLost === null) return [];
  const { tankId, afterTakeOffS } = result.fuelLost;
  const time = whenText(afterTakeOffS);
  return [
    [plain(`The return line fills ${tankName(tankId, result)} ${time}; from there fuel is lost overboard.`)],
  ];
}

function outsideInShort(result: LoadingResult, units: LoadingUnits): string {
  const broken = result.margins.filter((m) => !m.met);
  const worst = broken.find((m) => isOfCg(m.limit)) ?? broken[0];
  return worst === undefined ? 'fuel does not last' : `outside by ${amount(worst, 'excess', units)}`;
}
