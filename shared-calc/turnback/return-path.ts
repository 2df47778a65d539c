import { bracketedRoot } from '../numeric/bracketed-root.ts';
import { InputProblem } from '../problem.ts';
import { RAD_PER_DEG } from '../units/constants.ts';
import { afterLeg } from './glide-path.ts';
import type { Leg, PathState } from './glide-path.ts';
import { loadFactor, turnRateRadS } from './turn.ts';
import type { TurnBackQuestion } from './turn-back.ts';
import { profileIntegralM, profileRatio } from './wind-profile.ts';

/** The way back from one height of failure, the best of its kind. */
export interface ReturnPath {
  /** Height to spare at the end; negative is how far it falls short. */
  readonly marginM: number;
  /** First turn, from the runway's direction to the way back; past 180 by what the way back needs. */
  readonly headingChangeDeg: number;
  /** From the failure until aligned with the runway. */
  readonly lostM: number;
  /** Failure, turn begun, turn ended, second turn begun, aligned, and where the runway's end is crossed when that is later. */
  readonly corners: readonly PathState[];
  /** The whole way for drawing, at least every 5 degrees of turn. */
  readonly points: readonly PathState[];
}

/** Headings of the way back that are looked at, from the take-off direction. */
const FIRST_HEADING_RAD = 120 * RAD_PER_DEG;
const LAST_HEADING_RAD = 300 * RAD_PER_DEG;
const HEADING_STEP_RAD = 6 * RAD_PER_DEG;

/** One rate of sink and turn for each part of the way, and where it has to end. */
interface Manoeuvre {
  readonly side: 1 | -1;
  readonly question: TurnBackQuestion;
  readonly reactionSinkMs: number;
  readonly turnSinkMs: number;
  readonly straightSpeedMs: number;
  readonly turnSpeedMs: number;
  readonly rateRadS: number;
}

/**
 * The best way back to one side, as a function of the height of failure. Arguments are those that `turnBack` let through.
 * @throws InputProblem when the measured loss would be a dive
 * @returns for a height in m, the way; its margin is negative where none reaches, by more than the height where none exists
 */
export function returnPaths(
  question: TurnBackQuestion,
  side: 'left' | 'right',
): (heightM: number) => ReturnPath {
  const manoeuvre = manoeuvreOf(question, side);
  return (heightM) => {
    const start = failureState(manoeuvre, heightM);
    const marginAt = (headingRad: number) =>
      legsFor(manoeuvre, start, headingRad)?.marginM ?? noWayM(heightM);
    let best = FIRST_HEADING_RAD;
    let bestM = marginAt(best);
    for (
      let headingRad = best + HEADING_STEP_RAD;
      headingRad <= LAST_HEADING_RAD + 1e-9;
      headingRad += HEADING_STEP_RAD
    ) {
      const marginM = marginAt(headingRad);
      if (marginM > bestM) [best, bestM] = [headingRad, marginM];
    }
    const way = legsFor(manoeuvre, start, highestNear(marginAt, best, bestM));
    if (way === null)
      return { marginM: noWayM(heightM), headingChangeDeg: 0, lostM: 0, corners: [start], points: [start] };
    return described(manoeuvre, start, way);
  };
}

/** Below anything that a way which exists can fall short by, and finite for the search for a root. */
function noWayM(heightM: number): number {
  return -heightM - 1000;
}

function manoeuvreOf(question: TurnBackQuestion, side: 'left' | 'right'): Manoeuvre {
  const { aeroplane, pilot, measured } = question;
  const { glideSpeedMs, glideSinkMs } = aeroplane;
  const n = loadFactor(pilot.bankDeg);
  const rateRadS = turnRateRadS(glideSpeedMs, pilot.bankDeg);
  const modelTurnSinkMs = (glideSinkMs * (1 + n * n)) / 2;
  // A measured loss scales the whole manoeuvre that it was measured in.
  const modelLossM = (of: number) =>
    glideSinkMs * pilot.reactionS + (modelTurnSinkMs * of * RAD_PER_DEG) / rateRadS;
  const measuredRatio = measured === null ? 1 : measured.lossM / modelLossM(measured.headingChangeDeg);
  const turnSinkMs = modelTurnSinkMs * measuredRatio;
  if (turnSinkMs > glideSpeedMs * Math.SQRT1_2) {
    throw new InputProblem(
      'lossM',
      `${String(measured?.lossM)} m would be a turn steeper than 45 degrees down`,
    );
  }
  return {
    side: side === 'right' ? 1 : -1,
    question,
    reactionSinkMs: glideSinkMs * measuredRatio,
    turnSinkMs,
    straightSpeedMs: horizontalMs(glideSpeedMs, glideSinkMs),
    turnSpeedMs: horizontalMs(glideSpeedMs, turnSinkMs),
    rateRadS,
  };
}

function horizontalMs(speedMs: number, sinkMs: number): number {
  return Math.sqrt(speedMs ** 2 - sinkMs ** 2);
}

function failureState({ question }: Manoeuvre, heightM: number): PathState {
  const { aeroplane, wind } = question;
  const { climbSpeedMs, climbRateMs, liftOffM } = aeroplane;
  const climbS = heightM / climbRateMs;
  // Holding the runway's line costs a little of the speed along it; leaving that out puts the failure farther out.
  const aheadMs = horizontalMs(climbSpeedMs, climbRateMs);
  const driftM = (wind.headwindMs * profileIntegralM(heightM, wind.gradientExponent)) / climbRateMs;
  const acrossMs = wind.crosswindFromRightMs * profileRatio(heightM, wind.gradientExponent);
  return {
    alongM: liftOffM + aheadMs * climbS - driftM,
    rightM: 0,
    heightM,
    headingRad: Math.asin(acrossMs / aeroplane.glideSpeedMs),
    timeS: 0,
  };
}

interface Way {
  readonly legs: readonly Leg[];
  readonly headingRad: number;
  readonly aligned: PathState;
  /** Where the runway's end is crossed when that is after aligning, else the same as `aligned`. */
  readonly end: PathState;
  readonly marginM: number;
}

/** The way with one heading of its straight part; null when it cannot end on the runway's line with enough runway ahead. */
function legsFor(manoeuvre: Manoeuvre, start: PathState, headingRad: number): Way | null {
  const { side, question, reactionSinkMs, turnSinkMs, straightSpeedMs, turnSpeedMs, rateRadS } = manoeuvre;
  const { aeroplane, pilot, wind } = question;
  const turn = (byRad: number): Leg => ({
    durationS: Math.abs(byRad) / rateRadS,
    horizontalSpeedMs: turnSpeedMs,
    sinkMs: turnSinkMs,
    rateRadS: Math.sign(byRad) * rateRadS,
  });
  const straight = (durationS: number, sinkMs: number): Leg => ({
    durationS,
    horizontalSpeedMs: straightSpeedMs,
    sinkMs,
    rateRadS: 0,
  });
  const reaction = straight(pilot.reactionS, reactionSinkMs);
  const away = turn(side * headingRad - start.headingRad);
  const onto = turn(side * (Math.PI - headingRad));
  const turned = afterLeg(afterLeg(start, reaction, wind), away, wind);
  const alignedAfter = (backS: number) =>
    afterLeg(afterLeg(turned, straight(backS, aeroplane.glideSinkMs), wind), onto, wind);
  const asideM = (backS: number) => side * alignedAfter(backS).rightM;
  const longestS = (start.heightM + LONGEST_SHORTFALL_M) / aeroplane.glideSinkMs;
  // Already across the line, or never to meet it: no way with this heading.
  if (asideM(0) < 0 || asideM(longestS) > 0) return null;
  const backS = bracketedRoot(asideM, 0, longestS, 1e-6);
  const aligned = alignedAfter(backS);
  const legs = [reaction, away, straight(backS, aeroplane.glideSinkMs), onto];
  return withMargin(manoeuvre, legs, headingRad, aligned);
}

/** How far below the runway a way is still followed, so that the shortfall of a failing one is known. */
const LONGEST_SHORTFALL_M = 600;

function withMargin(
  manoeuvre: Manoeuvre,
  legs: readonly Leg[],
  headingRad: number,
  aligned: PathState,
): Way | null {
  const { runway, pilot } = manoeuvre.question;
  const settled = alongLine(manoeuvre, { ...aligned, heightM: pilot.wingsLevelByM }, pilot.wingsLevelByM);
  if (settled.alongM < runway.landingRunM) return null;
  const wingsLevelM = aligned.heightM - pilot.wingsLevelByM;
  if (aligned.alongM <= runway.lengthM)
    return { legs, headingRad, aligned, end: aligned, marginM: wingsLevelM };
  // Aligned before the runway: glide on along its line to its end.
  const beyondM = (lostM: number) => alongLine(manoeuvre, aligned, lostM).alongM - runway.lengthM;
  const mostM = aligned.heightM + LONGEST_SHORTFALL_M;
  if (beyondM(mostM) > 0) return null;
  const end = alongLine(manoeuvre, aligned, bracketedRoot(beyondM, 0, mostM, 1e-6));
  return { legs, headingRad, aligned, end, marginM: Math.min(wingsLevelM, end.heightM) };
}

/** Along the runway's line, crabbing against the crosswind of the height where it begins, until so much height is lost. */
function alongLine({ question, straightSpeedMs }: Manoeuvre, from: PathState, lostM: number): PathState {
  const { wind, aeroplane } = question;
  const acrossMs = wind.crosswindFromRightMs * profileRatio(from.heightM, wind.gradientExponent);
  const final: Leg = {
    durationS: lostM / aeroplane.glideSinkMs,
    horizontalSpeedMs: Math.sqrt(straightSpeedMs ** 2 - acrossMs ** 2),
    sinkMs: aeroplane.glideSinkMs,
    rateRadS: 0,
  };
  const back = { ...from, headingRad: Math.PI };
  return { ...afterLeg(back, final, { ...wind, crosswindFromRightMs: 0 }), headingRad: from.headingRad };
}

/** Golden-section search of the best heading beside the best one of the grid. */
function highestNear(marginAt: (headingRad: number) => number, nearRad: number, nearM: number): number {
  let from = nearRad - HEADING_STEP_RAD;
  let to = nearRad + HEADING_STEP_RAD;
  let best = nearRad;
  let bestM = nearM;
  const look = (headingRad: number): number => {
    const marginM = marginAt(headingRad);
    if (marginM > bestM) [best, bestM] = [headingRad, marginM];
    return marginM;
  };
  let low = to - GOLDEN * (to - from);
  let high = from + GOLDEN * (to - from);
  let lowM = look(low);
  let highM = look(high);
  for (let i = 0; i < GOLDEN_STEPS; i++) {
    if (lowM > highM) {
      [to, high, highM] = [high, low, lowM];
      low = to - GOLDEN * (to - from);
      lowM = look(low);
    } else {
      [from, low, lowM] = [low, high, highM];
      high = from + GOLDEN * (to - from);
      highM = look(high);
    }
  }
  return best;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** 12 degrees by 0.618 so often: 0.01 degrees, centimetres of height. */
const GOLDEN_STEPS = 15;

function described({ side, question }: Manoeuvre, start: PathState, way: Way): ReturnPath {
  const corners = [start];
  const points = [start];
  for (const leg of way.legs) {
    const from = corners.at(-1) ?? start;
    const pieces = Math.max(1, Math.ceil((Math.abs(leg.rateRadS) * leg.durationS) / POINT_STEP_RAD));
    for (let i = 1; i <= pieces; i++) {
      points.push(afterLeg(from, { ...leg, durationS: (leg.durationS * i) / pieces }, question.wind));
    }
    corners.push(points.at(-1) ?? from);
  }
  if (way.end !== way.aligned) {
    corners.push(way.end);
    points.push(way.end);
  }
  return {
    marginM: way.marginM,
    headingChangeDeg: Math.abs(side * way.headingRad - start.headingRad) / RAD_PER_DEG,
    lostM: start.heightM - way.aligned.heightM,
    corners,
    points,
  };
}

const POINT_STEP_RAD = 5 * RAD_PER_DEG;
