import type { CurveComparison } from '../fuel/compare-curves.ts';
import type { GaugeReading } from '../fuel/fill-run.ts';
import { SMOOTHNESS_GRID } from '../fuel/fit/refits.ts';
import type { GaugeCurve } from '../fuel/gauge-curve.ts';
import { readingText, scaleMarks, type GaugeScale } from '../fuel/gauge-scale.ts';
import { fuelAtReading, type ReadingPrecision } from '../fuel/readout.ts';
import type { FuelTotal } from '../fuel/total-fuel.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { roundedFor, shown, shownFigure } from '../units/shown.ts';
import { listWords } from './list-words.ts';

// What is said about two curves set side by side, and about the tanks together.

type VolumeUnits = Pick<UnitPreferences, 'volume'>;

export interface EffectParts {
  readonly before: GaugeCurve;
  readonly after: GaugeCurve;
  readonly scale: GaugeScale;
  readonly reading: GaugeReading;
  readonly precision: ReadingPrecision;
  readonly units: VolumeUnits;
}

/** What an edit did to the figure to plan on: at the reading in hand, and over all marks. */
export function effectSentence({ before, after, scale, reading, precision, units }: EffectParts): string {
  const planL = (curve: GaugeCurve, at: GaugeReading) => fuelAtReading(curve, at, precision).planningL;
  const [wasL, isL] = [planL(before, reading), planL(after, reading)];
  const changesL = scaleMarks(scale).map(({ reading: mark }) => planL(after, mark) - planL(before, mark));
  const [leastL, mostL] = [Math.min(...changesL), Math.max(...changesL)];
  const at = readingText(reading, scale);
  const plan = (valueL: number) => shown(valueL, 'volume', units.volume, 'plan');
  const here =
    roundedFor(wasL, 'volume', units.volume, 'plan') === roundedFor(isL, 'volume', units.volume, 'plan')
      ? `still ${plan(isL)} to plan on at ${at}`
      : `${plan(isL)} to plan on at ${at} instead of ${plan(wasL)}`;
  const isSmall = [leastL, mostL].every((each) => roundedFor(each, 'volume', units.volume, 'change') === 0);
  const change = (valueL: number) => shownFigure(valueL, 'volume', units.volume, 'change');
  const over = isSmall
    ? 'no mark changes noticeably'
    : `over all marks ${change(leastL)} to ${shown(mostL, 'volume', units.volume, 'change')}`;
  return `By the last edit ${here}; ${over}.`;
}

/** Whether two adopted curves differ beyond their doubt, and where. `older` and `newer` name them. */
export function comparisonSentence(
  { differences, differ }: CurveComparison,
  names: { older: string; newer: string },
  scale: GaugeScale,
  units: VolumeUnits,
): string {
  const pair = `${names.newer} and ${names.older}`;
  if (differences.length === 0) return `${pair} have no reading in common.`;
  const mark = (positionRatio: number) => readingText({ at: 'scale', positionRatio }, scale);
  const change = (valueL: number) => shown(valueL, 'volume', units.volume, 'change');
  const largest = (list: typeof differences) =>
    list.reduce((most, each) => (Math.abs(each.bestL) > Math.abs(most.bestL) ? each : most));
  if (!differ) {
    const most = largest(differences);
    return `${pair} do not differ beyond their doubt; the most is ${change(most.bestL)} at ${mark(most.positionRatio)}.`;
  }
  const beyond = differences.filter(({ isBeyondDoubt }) => isBeyondDoubt);
  const most = largest(beyond);
  const doubt = `nine times in ten ${change(most.lowL)} to ${change(most.highL)}`;
  return (
    `${pair} differ beyond their doubt at ${listWords(beyond.map((each) => mark(each.positionRatio)))}: ` +
    `by ${change(most.bestL)} at ${mark(most.positionRatio)} (${doubt}). ` +
    'Look for a reason before the newer one is trusted: another sender, a bent float, a supply that was low.'
  );
}

/** 'Both tanks together: plan on 31.4 L usable; 35.0 L is the best estimate, up to 39.0 L may be there.' */
export function totalSentence(total: FuelTotal, tankCount: number, units: VolumeUnits): string {
  const best =
    total.bestL === null ? '' : `${shown(total.bestL, 'volume', units.volume)} is the best estimate, `;
  const how = total.isJoint ? '' : ' The tanks’ own figures are added, which is the least that may be there.';
  return (
    `${tankCount === 2 ? 'Both' : `All ${String(tankCount)}`} tanks together: plan on ` +
    `${shown(total.planningL, 'volume', units.volume, 'plan')} usable; ${best}` +
    `up to ${shown(total.mostL, 'volume', units.volume, 'load')} may be there.${how}`
  );
}

/** How far the data want the curve to bend, in steps from 1 (stiff) to 8 (loose). */
export function smoothnessWords(shares: readonly number[]): string {
  const most = shares.indexOf(Math.max(...shares));
  const near = shares.flatMap((share, index) => (share >= 0.1 ? [String(index + 1)] : []));
  return `The data ask mostly for ${String(most + 1)}${near.length > 1 ? `, and allow ${near[0] ?? ''} to ${near.at(-1) ?? ''}` : ''}.`;
}

/** The step of a smoothness, 1 (stiffest) to 8 (loosest); the nearest one for a figure between them. */
export function smoothnessStep(smoothness: number): number {
  const distance = (sigma: number) => Math.abs(Math.log(sigma / smoothness));
  const grid: readonly number[] = SMOOTHNESS_GRID;
  return (
    1 + grid.reduce((near, sigma, index) => (distance(sigma) < distance(grid[near] ?? 1) ? index : near), 0)
  );
}
