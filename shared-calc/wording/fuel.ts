import type { FillRun, GaugeReading } from '../fuel/fill-run.ts';
import type { NextPour } from '../fuel/fit/advise-test.ts';
import type { GaugeCurve } from '../fuel/gauge-curve.ts';
import { divisionText, readingText, resolutionRatio } from '../fuel/gauge-scale.ts';
import type { GaugeScale } from '../fuel/gauge-scale.ts';
import type { ReadingRefusal } from '../fuel/parse-reading.ts';
import type { FuelReadout } from '../fuel/readout.ts';
import type { LikelyCause, RowFlag } from '../fuel/row-flags.ts';
import { enduranceOf } from '../performance/endurance.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { roundedFor, shown } from '../units/shown.ts';
import { shownDuration } from '../units/duration-text.ts';
import { plain, strong } from './parts.ts';
import type { Sentence } from './parts.ts';

export interface FuelAnswerParts {
  readonly readout: FuelReadout;
  readonly reading: GaugeReading;
  readonly scale: GaugeScale;
  /** "rear tank alone"; '' where the aeroplane has one tank. */
  readonly tankWords: string;
  /** Level cruise; null leaves the endurance out. */
  readonly fuelFlowLPerH: number | null;
  readonly reserveS: number;
  readonly units: Pick<UnitPreferences, 'volume' | 'fuelFlow'>;
}

/**
 * The answer above the gauge's plot: what was read and how finely, what to plan on, what may be there, how long it lasts.
 * Its strong part is the figure to plan on; `textOf` makes plain text of it.
 * @throws RangeProblem for a fuel flow or reserve outside the range of `enduranceOf`
 * @example "Reading 5/8 to the nearest eighth: plan on 20.0 L usable; 36 min in level cruise at 18.0 L/h after 30 min
 *   reserve, taxi and climb not included."
 */
export function fuelAnswer(parts: FuelAnswerParts): Sentence {
  const { readout, reading, scale, tankWords } = parts;
  const rest = [whatElse(parts), enduranceWords(parts)]
    .filter((part) => part !== '')
    .map((part) => `; ${part}`);
  const asAt = isBeyondLastMoved(readout) ? ', as at the highest reading that moved' : '';
  return [
    plain(`${readingWords(reading, readout, scale)}: `),
    strong(planWords(parts)),
    plain(`${tankWords === '' ? '' : `, ${tankWords}`}${asAt}${rest.join('')}.`),
  ];
}

/** What the planning figure covers and what not, and who decides. It stands beside every fuel answer. */
export function fuelCaution(curve: GaugeCurve): string {
  if (curve.method === 'isotonicMeansMonotoneCubic') return `${NO_BAND} ${WHO_DECIDES}`;
  return `${curve.fewRows ? `${FEW_ROWS} ` : ''}${BAND} ${WHO_DECIDES}`;
}

/** The same in one line, for a place that says beside it what is allowed for and who decides. */
export function fuelCautionShort(curve: GaugeCurve): string {
  if (curve.method === 'isotonicMeansMonotoneCubic') return `${NO_BAND} ${CHECK}`;
  return `${curve.fewRows ? `${FEW_ROWS} ` : ''}${BAND_SHORT} ${CHECK}`;
}

/** What a figure of the curve allows for, as a list: for a title block. */
export function fuelCovers(curve: GaugeCurve): string {
  return curve.method === 'isotonicMeansMonotoneCubic'
    ? 'step of the scale only'
    : 'containers, start, step of the scale, sticking, lag';
}

const BAND_SHORT =
  'About nineteen times in twenty at least this much is there; not in another attitude, supply or fuel than the test’s.';
const CHECK = 'Check against a dipstick and the time flown.';
const BAND =
  'About nineteen times in twenty at least this much is there, allowing for containers, start, step of the scale, ' +
  'sticking and lag; not for another attitude, supply or fuel than in the test.';
const FEW_ROWS = 'Few readings: the band rests mostly on what gauges are like in general.';
const NO_BAND =
  'Covers how finely the gauge was read, not the errors of the containers, a needle that sticks or lags, or ' +
  'another attitude than in the test.';
const WHO_DECIDES =
  'Check against a dipstick and the time flown; the flight manual, its placards and a mechanic decide.';

/** Whether one more pour is worth it, and where: on average over the marks, as the advice counts. */
export function nextPourSentence(
  pour: NextPour,
  scale: GaugeScale,
  units: Pick<UnitPreferences, 'volume'>,
): string {
  if (!pour.isWorthwhile) return 'No point in more pours: none would raise the planning figures noticeably.';
  const step = resolutionRatio(scale);
  const positionRatio = Math.min(1 - step, Math.max(step, Math.round(pour.positionRatio / step) * step));
  const mark = readingText({ at: 'scale', positionRatio }, scale);
  const gain = shown(pour.gainL, 'volume', units.volume, 'plan');
  return roundedFor(pour.gainL, 'volume', units.volume, 'plan') === 0
    ? `One more pour near ${mark} would help most, but by too little to show in the planning figures.`
    : `One more pour near ${mark} would raise the planning figures by about ${gain} on average; elsewhere it gains less.`;
}

/** Why there is no curve yet. */
export function tooFewReadingsSentence(distinctCount: number, neededCount: number): string {
  if (distinctCount === 1)
    return (
      'Not enough readings for a curve: every reading between the stops is the same. Pour on until the needle ' +
      'moves, and look whether the gauge has power.'
    );
  return (
    `Not enough readings for a curve: ${String(distinctCount)} of at least ${String(neededCount)} different ` +
    'positions between the stops. Pour on, and read after each pour.'
  );
}

/** What the volumes of a run count from. */
export function runStartSentence(
  run: FillRun,
  unusableL: number,
  units: Pick<UnitPreferences, 'volume'>,
): string {
  const { start } = run;
  switch (start.from) {
    case 'engineFeed':
      return "Started drained at the engine's feed: nothing usable was left, and volumes are usable fuel.";
    case 'sump':
      return `Started drained at the sump: the first ${shown(unusableL, 'volume', units.volume)} are unusable and not counted.`;
    case 'known':
      return `Started with ${shown(start.usableL, 'volume', units.volume)} usable, as stated.`;
  }
}

/** A row beside its neighbours: "1.8 L less than the curve; kept. Repeat it." */
export function residualSentence(residualL: number, units: Pick<UnitPreferences, 'volume'>): string {
  const size = shown(Math.abs(residualL), 'volume', units.volume);
  return `${size} ${residualL < 0 ? 'less' : 'more'} than the curve; kept. Repeat it.`;
}

/** A flagged row: what is odd, and what would explain it. */
export function rowFlagSentence(flag: RowFlag, units: Pick<UnitPreferences, 'volume'>): string {
  const volume = (volumeL: number, question: 'plain' | 'excess' = 'plain') =>
    shown(volumeL, 'volume', units.volume, question);
  switch (flag.kind) {
    case 'fellWhileFilling':
      return `The reading fell by ${scaleShare(flag.byRatio)} though fuel went in; kept. Read it again after tapping.`;
    case 'roseWhileDraining':
      return `The reading rose by ${scaleShare(flag.byRatio)} though fuel came out; kept. Read it again after tapping.`;
    case 'aboveCapacity':
      return (
        `${volume(flag.usableL)} in all is ${volume(flag.excessL, 'excess')} more than the tank holds. ` +
        CAUSES[flag.likely]
      );
    case 'belowEmptySump':
      return `More came out than was in the tank: ${volume(flag.usableL)} usable is left by this sum. Check the start.`;
    case 'fullFarBelowCapacity':
      return `On the full stop with ${volume(flag.usableL)}, less than half of what the tank holds. ${CAUSES[flag.likely]}`;
    case 'outsideScale':
      return 'This reading lies outside the scale of the gauge. Type it again.';
  }
}

/** Why a typed reading was not taken; what was typed stays in the field. */
export function readingRefusalSentence(typed: string, refusal: ReadingRefusal): string {
  switch (refusal.kind) {
    case 'notAReading':
      return `"${typed}" is not a reading of this gauge; kept as typed. Expected ${alternatives(refusal.examples)}.`;
    case 'outsideScale':
      return `"${typed}" lies outside the scale, which runs from ${refusal.emptyText} to ${refusal.fullText}; kept as typed.`;
    case 'ambiguous':
      return `"${typed}" could be ${alternatives(refusal.mayBe)}: type it so.`;
    case 'otherUnit':
      return `This gauge prints ${refusal.unitOnGauge}; "${typed}" is kept as typed. Type what the needle shows.`;
  }
}

const CAUSES: Readonly<Record<LikelyCause, string>> = {
  containersOrStatedCapacity: 'That is within what containers and a stated capacity are good for; kept.',
  litresTypedAsGallons: 'Likely: litres were typed as gallons. Check the unit of each pour.',
  pourTypedTwiceOrStartTooHigh:
    'Likely: a pour was typed twice, or the tank was emptier at the start than stated.',
  gallonsTypedAsLitres: 'Likely: gallons were typed as litres. Check the unit of each pour.',
  pourForgotten: 'Likely: a pour was forgotten, or the tank was not empty at the start.',
};

function readingWords(reading: GaugeReading, readout: FuelReadout, scale: GaugeScale): string {
  const mark = readingText(reading, scale);
  if (reading.at !== 'scale') return `At ${mark}`;
  return readout.precision === 'nearestDivision'
    ? `Reading ${mark} to the nearest ${divisionText(scale)}`
    : `Needle on ${mark}`;
}

function planWords({ readout, units }: FuelAnswerParts): string {
  if (roundedFor(readout.planningL, 'volume', units.volume, 'plan') === 0) return 'plan on 0';
  const figure = shown(readout.planningL, 'volume', units.volume, 'plan');
  return `plan on ${figure} usable`;
}

function isBeyondLastMoved({ place }: FuelReadout): boolean {
  return place === 'fullStop' || place === 'aboveLastMoved';
}

function whatElse({ readout, units }: FuelAnswerParts): string {
  const most = shown(readout.mostL, 'volume', units.volume, 'load');
  switch (readout.place) {
    case 'emptyStop':
    case 'belowFirstMoved':
      return `less than ${most} may be there`;
    case 'fullStop':
    case 'aboveLastMoved':
      return `up to ${most} may be there`;
    case 'deadZone': {
      const { fromL = 0, toL = 0 } = readout.standstill ?? {};
      const from = shown(fromL, 'volume', units.volume, 'plan');
      return `the needle stands still here from ${from} to ${shown(toL, 'volume', units.volume, 'load')}`;
    }
    case 'onCurve':
      return readout.planningL === 0 ? `up to ${most} may be there` : '';
  }
}

function enduranceWords({ readout, fuelFlowLPerH, reserveS, units }: FuelAnswerParts): string {
  if (fuelFlowLPerH === null || readout.planningL === 0) return '';
  const { cruiseS } = enduranceOf({
    usableL: readout.planningL,
    fuelFlowLPerH,
    taxiL: 0,
    climbL: 0,
    legalReserveS: reserveS,
    ownReserveS: 0,
  });
  const flow = shown(fuelFlowLPerH, 'fuelFlow', units.fuelFlow);
  if (cruiseS === 0) return `reserve only at ${flow}`;
  return (
    `${shownDuration(cruiseS, 'duration left')} in level cruise at ${flow} after ` +
    `${shownDuration(reserveS)} reserve, taxi and climb not included`
  );
}

function scaleShare(ratio: number): string {
  return `${String(Math.round(ratio * 100))}\u00a0% of the scale`;
}

function alternatives(texts: readonly string[]): string {
  if (texts.length < 2) return texts.join('');
  return `${texts.slice(0, -1).join(', ')} or ${texts.at(-1) ?? ''}`;
}
