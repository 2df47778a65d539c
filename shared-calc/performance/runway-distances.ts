import { InputProblem, requireRange } from '../problem.ts';
import { isaTemperatureC } from '../atmosphere/standard-atmosphere.ts';

/** A take-off to, or a landing from, 50 ft. */
export interface RunwayDistances {
  readonly groundRollM: number;
  readonly overObstacleM: number;
}

/** How a step came to be. Estimates never shorten a distance. */
export type StepKind = 'table' | 'manualNote' | 'publishedFactor' | 'estimate' | 'safetyFactor';

/** One change of both distances: first multiplied, then lengthened by the same metres. */
export interface DistanceChange {
  readonly kind: StepKind;
  /** In words, as a person would check it: "headwind 4 kt", "dry grass". */
  readonly name: string;
  readonly source: string;
  readonly factorRatio: number;
  readonly addM: number;
}

export interface DistanceStep extends DistanceChange {
  /** After this change. */
  readonly distances: RunwayDistances;
}

/**
 * Distances after each change, in the order given, so that a person can follow and check every one.
 * @param start as read from the manual, 1 to 10000 m each, the ground roll the shorter
 * @throws RangeProblem for a distance, a factor (0.5 to 10) or an addition (0 to 10000 m) outside its range
 * @throws InputProblem for an estimate that would shorten, or a ground roll longer than the whole
 */
export function distanceSteps(start: RunwayDistances, changes: readonly DistanceChange[]): DistanceStep[] {
  requireDistances(start);
  let distances = start;
  return changes.map((change, i) => {
    const field = `changes[${String(i)}]`;
    requireRange(`${field}.factorRatio`, change.factorRatio, 0.5, 10, '');
    requireRange(`${field}.addM`, change.addM, 0, LONGEST_M, 'm');
    if (change.kind === 'estimate' && change.factorRatio < 1) {
      throw new InputProblem(
        field,
        `an estimate never shortens; ${change.name} would by ${String(change.factorRatio)}`,
      );
    }
    distances = {
      groundRollM: distances.groundRollM * change.factorRatio + change.addM,
      overObstacleM: distances.overObstacleM * change.factorRatio + change.addM,
    };
    return { ...change, distances };
  });
}

/** What a manual's note counts: per so much headwind, tailwind, degrees above standard, slope; or a surface that is there. */
export type NotePer =
  | { readonly of: 'headwindMs' | 'tailwindMs' | 'aboveStandardC' | 'slopeRatio'; readonly amount: number }
  | { readonly of: 'surface' };

/** A note under a table, as data: "decrease 10 % for each 4 kt of headwind", "dry grass: add 20 % of the total to both". */
export interface ManualNote {
  readonly name: string;
  readonly per: NotePer;
  /** −0.5 to 2; negative shortens. */
  readonly changeRatio: number;
  /** Of which distance the share is: each of its own, or one of them added to both. */
  readonly shareOf: 'each' | 'groundRoll' | 'overObstacle';
}

/**
 * A note as a change of distances.
 * @param amount what there is of it, in the unit in which the note counts; 1 for a surface
 * @param distances as they are before the note: a share of one of them is added to both
 * @param source "manual, figure 5-4, note 2"
 * @throws RangeProblem for a note or an amount outside its range (no negative amounts: calm counts as 0)
 * @throws InputProblem when the note would shorten by more than half, or shortens by a share of one distance
 * @example 10 % for each 4 kt of headwind, 8 kt: factor 0.8
 */
export function noteChange(
  note: ManualNote,
  amount: number,
  distances: RunwayDistances,
  source: string,
): DistanceChange {
  requireDistances(distances);
  requireRange('changeRatio', note.changeRatio, -0.5, 2, '');
  requireRange('amount', amount, 0, 100, '');
  const times = note.per.of === 'surface' ? amount : amount / perAmount(note.per.amount);
  const changeRatio = note.changeRatio * times;
  if (changeRatio < -0.5) throw new InputProblem('amount', `${note.name} would shorten by more than half`);
  const step = { kind: 'manualNote', name: note.name, source } as const;
  if (note.shareOf === 'each') return { ...step, factorRatio: 1 + changeRatio, addM: 0 };
  if (changeRatio < 0)
    throw new InputProblem('changeRatio', `${note.name} shortens; a share added to both cannot`);
  const share = note.shareOf === 'groundRoll' ? distances.groundRollM : distances.overObstacleM;
  return { ...step, factorRatio: 1, addM: changeRatio * share };
}

/**
 * How far the air is above standard at a pressure altitude; 0 when it is not, since a note about heat says nothing of cold.
 * @param temperatureC −60 to 65 degC
 * @param pressureAltitudeM −1500 to 7000 m
 * @throws RangeProblem naming either
 */
export function aboveStandardC(temperatureC: number, pressureAltitudeM: number): number {
  requireRange('temperatureC', temperatureC, -60, 65, 'degC');
  requireRange('pressureAltitudeM', pressureAltitudeM, -1500, 7000, 'm');
  return Math.max(0, temperatureC - isaTemperatureC(pressureAltitudeM));
}

const LONGEST_M = 10000;

function requireDistances({ groundRollM, overObstacleM }: RunwayDistances): void {
  requireRange('groundRollM', groundRollM, 1, LONGEST_M, 'm');
  requireRange('overObstacleM', overObstacleM, 1, LONGEST_M, 'm');
  if (groundRollM > overObstacleM) {
    throw new InputProblem(
      'groundRollM',
      `${String(groundRollM)} m is longer than the ${String(overObstacleM)} m over the obstacle`,
    );
  }
}

function perAmount(amount: number): number {
  requireRange('per.amount', amount, 1e-4, 100, '');
  return amount;
}
