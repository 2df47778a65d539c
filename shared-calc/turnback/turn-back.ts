import { bracketedRoot } from '../numeric/bracketed-root.ts';
import { InputProblem, requireRange } from '../problem.ts';
import { returnPaths } from './return-path.ts';
import type { ReturnPath } from './return-path.ts';
import { loadFactor, stallSpeedUnderLoadMs } from './turn.ts';
import { GRADIENT_HEIGHT_M, profileRatio, requireWind } from './wind-profile.ts';
import type { WindOverRunway } from './wind-profile.ts';

/** Speeds are true airspeeds at the field's height: a thin day glides faster, wider and lower. */
export interface GlidingAeroplane {
  /** Best glide at this mass, 15 to 60 m/s. */
  readonly glideSpeedMs: number;
  /** Wings level at that speed, propeller as it will be, 0.5 to 10 m/s. */
  readonly glideSinkMs: number;
  /** At one g, as flown in the glide, 8 to 50 m/s. */
  readonly stallSpeedMs: number;
  /** In the climb, 15 to 60 m/s, and its rate, 0.3 to 15 m/s. */
  readonly climbSpeedMs: number;
  readonly climbRateMs: number;
  /** From where the roll begins to lift-off, 10 to 3000 m. */
  readonly liftOffM: number;
}

/** What the pilot states about himself. */
export interface TurnBackPilot {
  /** 10 to 45 degrees. */
  readonly bankDeg: number;
  /** From the failure until the turn is established, rolling in included: 4 to 30 s. */
  readonly reactionS: number;
  /** Wings level along the runway at this height or higher, 0 to 150 m. */
  readonly wingsLevelByM: number;
}

/** 30 degrees and 4 s are where a statement begins, not what anybody achieves unprepared. 50 ft: common practice, no source. */
export const DEFAULT_PILOT: TurnBackPilot = { bankDeg: 30, reactionS: 4, wingsLevelByM: 15.24 };

export interface TurnBackRunway {
  /** The roll begins at its start, 100 to 6000 m. */
  readonly lengthM: number;
  /** Still needed ahead at touch-down, the wind now behind: 0 to 6000 m, at most the length. */
  readonly landingRunM: number;
}

/**
 * What the pilot measured at a safe altitude: height lost from closing the throttle, through the stated reaction and a
 * turn at the stated bank, until wings level.
 */
export interface MeasuredLoss {
  /** 10 to 300 m. */
  readonly lossM: number;
  /** 90 to 360. */
  readonly headingChangeDeg: number;
}

export interface TurnBackQuestion {
  readonly aeroplane: GlidingAeroplane;
  readonly pilot: TurnBackPilot;
  readonly runway: TurnBackRunway;
  readonly wind: WindOverRunway;
  /** null where none was measured. */
  readonly measured: MeasuredLoss | null;
}

export type TurnBackSide =
  | {
      readonly kind: 'reaches';
      /** Above the field. Below it the turn does not reach; above it, it still may fail. */
      readonly lowestHeightM: number;
      /** The path from that height. */
      readonly path: ReturnPath;
    }
  /** From no height up to the highest looked at: the climb runs away from the glide. */
  | { readonly kind: 'neverReaches'; readonly lookedUpToM: number; readonly leastShortM: number };

export interface TurnBackAnswer {
  readonly left: TurnBackSide;
  readonly right: TurnBackSide;
  /** The side that reaches from lower; null when they are within a metre or neither reaches. */
  readonly better: 'left' | 'right' | null;
  readonly basis: 'model' | 'measuredAtAltitude';
  /** Glide speed over the stall speed in the turn; near 1 the turn itself is the danger. */
  readonly speedOverStallRatio: number;
}

/**
 * The lowest height above the field from which a turn back reaches the runway, to each side, by a model. FOR PLANNING ON
 * THE GROUND. Landing ahead comes first; below the height land ahead, above it a turn may still fail.
 *
 * Path: climb along the extended runway at steady rate and speed; failure; straight on for the reaction time, sinking as in
 * the glide; a turn at the stated bank past the reciprocal; a straight glide back towards the runway's line; a turn onto
 * it. The heading of the straight part is chosen for the most height at the end. Reached means wings level above the
 * runway at the pilot's height with the landing run ahead, or, aligned before the runway, crossing its end. In the turn
 * the speed stays at best glide, and the sink is that of a parabolic polar, (1 + n^2)/2 times wings level. The path is
 * exact (`glide-path.ts`); the height is found to 0.1 m.
 * Left out: rolling time beyond the reaction, speed lost before the nose goes down, airspeed changed by wind that changes
 * with height, gusts, obstacles, a propeller that stops or not, surprise. Heights that reach within a band of less than
 * 20 m and then no more are not found.
 * @throws RangeProblem naming the quantity that lies outside the range given beside it
 * @throws InputProblem when the landing run is longer than the runway, the glide speed is not above the stall in the turn, the
 *   glide is steeper than 1 in 3, the climb than 30 degrees, a measured loss than 45, or the wind at 300 m near the glide speed
 * @source Airplane Flying Handbook, FAA-H-8083-3C (method: reaction, turn past the reciprocal); FAA-H-8083-25C ch. 5 (turn)
 */
export function turnBack(question: TurnBackQuestion): TurnBackAnswer {
  requireQuestion(question);
  const { aeroplane, pilot } = question;
  const stallMs = stallSpeedUnderLoadMs(aeroplane.stallSpeedMs, loadFactor(pilot.bankDeg));
  const speedOverStallRatio = aeroplane.glideSpeedMs / stallMs;
  if (speedOverStallRatio <= 1) {
    throw new InputProblem(
      'bankDeg',
      `at ${String(pilot.bankDeg)} degrees the aeroplane stalls at best glide speed`,
    );
  }
  const left = sideOf(question, 'left');
  const right = sideOf(question, 'right');
  return {
    left,
    right,
    better: betterOf(left, right),
    basis: question.measured === null ? 'model' : 'measuredAtAltitude',
    speedOverStallRatio,
  };
}

const LOWEST_M = 10;
const HIGHEST_M = 900;
const STEP_M = 20;
const HEIGHT_TOLERANCE_M = 0.1;

function sideOf(question: TurnBackQuestion, side: 'left' | 'right'): TurnBackSide {
  const pathFrom = returnPaths(question, side);
  const marginM = (heightM: number) => pathFrom(heightM).marginM;
  let leastShortM = Infinity;
  for (let heightM = LOWEST_M; heightM <= HIGHEST_M; heightM += STEP_M) {
    const margin = marginM(heightM);
    if (margin >= 0) {
      const lowestHeightM = reachedFromM(marginM, heightM);
      return { kind: 'reaches', lowestHeightM, path: pathFrom(lowestHeightM) };
    }
    leastShortM = Math.min(leastShortM, -margin);
  }
  return { kind: 'neverReaches', lookedUpToM: HIGHEST_M, leastShortM };
}

function reachedFromM(marginM: (heightM: number) => number, reachedM: number): number {
  if (reachedM === LOWEST_M) return LOWEST_M;
  const root = bracketedRoot(marginM, reachedM - STEP_M, reachedM, HEIGHT_TOLERANCE_M);
  // The root may be on its short side by the tolerance; the answer must reach.
  return marginM(root) >= 0 ? root : Math.min(reachedM, root + HEIGHT_TOLERANCE_M);
}

function betterOf(left: TurnBackSide, right: TurnBackSide): 'left' | 'right' | null {
  const leftM = left.kind === 'reaches' ? left.lowestHeightM : Infinity;
  const rightM = right.kind === 'reaches' ? right.lowestHeightM : Infinity;
  if (leftM === rightM || Math.abs(leftM - rightM) < 1) return null;
  return leftM < rightM ? 'left' : 'right';
}

function requireQuestion({ aeroplane, pilot, runway, wind, measured }: TurnBackQuestion): void {
  requireRange('glideSpeedMs', aeroplane.glideSpeedMs, 15, 60, 'm/s');
  requireRange('glideSinkMs', aeroplane.glideSinkMs, 0.5, 10, 'm/s');
  requireRange('stallSpeedMs', aeroplane.stallSpeedMs, 8, 50, 'm/s');
  requireRange('climbSpeedMs', aeroplane.climbSpeedMs, 15, 60, 'm/s');
  requireRange('climbRateMs', aeroplane.climbRateMs, 0.3, 15, 'm/s');
  requireRange('liftOffM', aeroplane.liftOffM, 10, 3000, 'm');
  requireRange('bankDeg', pilot.bankDeg, 10, 45, 'degrees');
  requireRange('reactionS', pilot.reactionS, 4, 30, 's');
  requireRange('wingsLevelByM', pilot.wingsLevelByM, 0, 150, 'm');
  requireRange('lengthM', runway.lengthM, 100, 6000, 'm');
  requireRange('landingRunM', runway.landingRunM, 0, 6000, 'm');
  if (runway.landingRunM > runway.lengthM) {
    throw new InputProblem('landingRunM', `${String(runway.landingRunM)} m is longer than the runway`);
  }
  requireWind(wind);
  requirePossible(aeroplane, wind);
  if (measured === null) return;
  requireRange('lossM', measured.lossM, 10, 300, 'm');
  requireRange('headingChangeDeg', measured.headingChangeDeg, 90, 360, 'degrees');
}

/** Each figure may be good by itself and the whole not fly. */
function requirePossible(aeroplane: GlidingAeroplane, wind: WindOverRunway): void {
  const { glideSpeedMs, glideSinkMs, climbSpeedMs, climbRateMs } = aeroplane;
  if (glideSpeedMs < LEAST_GLIDE_RATIO * glideSinkMs) {
    throw new InputProblem(
      'glideSinkMs',
      `${String(glideSinkMs)} m/s at ${String(glideSpeedMs)} m/s is steeper than 1 in 3`,
    );
  }
  if (climbRateMs > climbSpeedMs / 2) {
    throw new InputProblem(
      'climbRateMs',
      `${String(climbRateMs)} m/s at ${String(climbSpeedMs)} m/s is steeper than 30 degrees`,
    );
  }
  const aloftMs =
    Math.hypot(wind.headwindMs, wind.crosswindFromRightMs) *
    profileRatio(GRADIENT_HEIGHT_M, wind.gradientExponent);
  if (aloftMs > MOST_WIND_RATIO * glideSpeedMs) {
    throw new InputProblem(
      'wind',
      `grows to ${aloftMs.toFixed(1)} m/s at 300 m, too much for a glide at ${String(glideSpeedMs)} m/s`,
    );
  }
}

const LEAST_GLIDE_RATIO = 3;
/** With more the aeroplane could not hold the runway's line, or would hang over it. */
const MOST_WIND_RATIO = 0.9;
