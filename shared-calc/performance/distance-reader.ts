import { airReader } from './air-reader.ts';
import type { PerformanceBook, PreparedDistances } from './departure-book.ts';
import { distanceRules } from './distance-rules.ts';
import type { Conditions, DistanceRule, RunwayConditions } from './distance-rules.ts';
import { beyondKind, ruleRefusal } from './figure-kind.ts';
import type { FigureKind, RefusedKind } from './figure-kind.ts';
import { readFlat, tableReading } from './flat-table.ts';
import type { RunwayPhase } from './published-factors.ts';
import type { SeaLevelRecord } from './records.ts';
import { estimateTakeOff } from './sea-level-estimate.ts';
import { DEFAULT_WIND_CREDIT, FULL_WIND_CREDIT } from './wind.ts';

/** The runway, as far as a distance has to do with it. */
export interface RunwayCase extends RunwayConditions {
  /** What there is for this phase: see `availableLengthM`. */
  readonly availableM: number;
}

/** One answer in numbers; never NaN. Used again for each reading. */
export interface DistanceNumbers {
  kind: FigureKind;
  /** Without the safety factor; Infinity where refused, and where the manual prints no such distance. */
  groundRollM: number;
  overObstacleM: number;
  /** The one that has to fit on the runway, with the safety factor; Infinity where refused. */
  requiredM: number;
  /** What of the runway is left; negative where it is too short; −Infinity where refused. */
  marginM: number;
}

export function distanceNumbers(): DistanceNumbers {
  return {
    kind: 'noTable',
    groundRollM: Infinity,
    overObstacleM: Infinity,
    requiredM: Infinity,
    marginM: -Infinity,
  };
}

/** Told of each change in turn, with the distances after it. */
export type OnStep = (
  rule: DistanceRule,
  amount: number,
  factorRatio: number,
  addM: number,
  groundRollM: number,
  overObstacleM: number,
) => void;

export interface DistanceReader {
  readonly safety: { readonly factorRatio: number; readonly source: string };
  readonly against: 'overObstacle' | 'groundRoll';
  /** Standard uncertainty of the figures as a ratio; 0 where there is no table. */
  readonly readingSdRatio: number;
  /**
   * @param out          overwritten and given back
   * @param dewPointC    NaN where not known: the air counts as dry
   * @param headwindMs   as it blows, before any credit; negative is a tailwind
   * Any other argument that is NaN, or air outside −1500 to 7000 m, −60 to 60 degC, dew point above the temperature,
   * wind of 60 m/s and more, gives `missingAir`.
   */
  read(
    out: DistanceNumbers,
    massKg: number,
    pressureAltitudeM: number,
    temperatureC: number,
    dewPointC: number,
    headwindMs: number,
    onStep?: OnStep,
  ): DistanceNumbers;
}

/**
 * A take-off or landing on one runway, prepared to be asked for many observations and masses: half a microsecond each
 * and no object made. `departureFigures` gives one answer with all its steps.
 * Order of the steps: table at the virtual temperature, power lost to humidity, what the table has no axis for, wind with
 * its credit, slope, surface, safety factor.
 * @param runway.availableM 0 to 10000 m
 */
export function distanceReader(
  book: PerformanceBook,
  phase: RunwayPhase,
  runway: RunwayCase,
): DistanceReader {
  const prepared = phase === 'takeOff' ? book.takeOff : book.landing;
  if (prepared !== null) return tableReader(prepared, phase, runway);
  if (phase === 'takeOff' && book.seaLevel !== null)
    return estimateReader(book.seaLevel, book.liftToDragRatio, runway);
  return {
    safety: { factorRatio: 1, source: '' },
    against: 'overObstacle',
    readingSdRatio: 0,
    read: (out) => refuse(out, 'noTable'),
  };
}

function tableReader(prepared: PreparedDistances, phase: RunwayPhase, runway: RunwayCase): DistanceReader {
  const { record, axes, groundRoll, overObstacle } = prepared;
  const { safety, against, readingSdRatio } = record;
  const rules = distanceRules(record, phase, axes, runway);
  const credit = record.windMargin === 'included' ? FULL_WIND_CREDIT : DEFAULT_WIND_CREDIT;
  const reading = tableReading();
  const air = airReader();
  return {
    safety,
    against,
    readingSdRatio,
    read(out, massKg, pressureAltitudeM, temperatureC, dewPointC, headwindMs, onStep) {
      if (!air.set(massKg, pressureAltitudeM, temperatureC, dewPointC, headwindMs, credit))
        return refuse(out, 'missingAir');
      const { conditions } = air;
      reading.massKg = massKg;
      reading.pressureAltitudeM = pressureAltitudeM;
      reading.temperatureC = conditions.temperatureC;
      reading.headwindMs = conditions.headwindMs;
      reading.isHeld = false;
      // A distance that is not printed, here or at all, stays Infinity through all steps; only the one that has to fit is needed.
      const rollM = groundRoll === null ? Infinity : readFlat(groundRoll.flat, reading);
      const overM = overObstacle === null ? Infinity : readFlat(overObstacle.flat, reading);
      if (Number.isNaN(against === 'groundRoll' ? rollM : overM))
        return refuse(out, beyondKind(reading.beyond));
      out.groundRollM = Number.isNaN(rollM) ? Infinity : rollM;
      out.overObstacleM = Number.isNaN(overM) ? Infinity : overM;
      const refused = applyRules(out, rules, conditions, onStep);
      if (refused !== null) return refuse(out, refused);
      out.kind = conditions.isEstimate ? 'estimate' : reading.isHeld || conditions.isHeld ? 'edge' : 'table';
      return complete(out, safety.factorRatio, against, runway.availableM);
    },
  };
}

function estimateReader(figure: SeaLevelRecord, liftToDragRatio: number, runway: RunwayCase): DistanceReader {
  const { massKg: figureMassKg, groundRollM, overObstacleM, safety, readingSdRatio } = figure;
  const base = { distances: { groundRollM, overObstacleM }, massKg: figureMassKg, liftToDragRatio };
  // The relation knows air and mass; one figure brings no notes, so wind, slope and surface come from published factors.
  const rules = distanceRules(NO_NOTES, 'takeOff', ['pressureAltitudeM', 'temperatureC'], runway);
  const air = airReader();
  return {
    safety,
    against: 'overObstacle',
    readingSdRatio,
    read(out, massKg, pressureAltitudeM, temperatureC, dewPointC, headwindMs, onStep) {
      if (!air.set(massKg, pressureAltitudeM, temperatureC, dewPointC, headwindMs, DEFAULT_WIND_CREDIT))
        return refuse(out, 'missingAir');
      if (liftToDragRatio < LEAST_LIFT_TO_DRAG) return refuse(out, 'noRule');
      const { densityRatio } = air.humid;
      if (densityRatio < LEAST_DENSITY_RATIO) return refuse(out, 'higher');
      // Thicker air than standard gains nothing: the relation holds it at the figure.
      const answer = estimateTakeOff(base, massKg, Math.min(1, densityRatio));
      if (answer.kind === 'wouldNotClimb') return refuse(out, 'wouldNotClimb');
      out.groundRollM = answer.distances.groundRollM;
      out.overObstacleM = answer.distances.overObstacleM;
      const refused = applyRules(out, rules, air.conditions, onStep);
      if (refused !== null) return refuse(out, refused);
      out.kind = 'estimate';
      return complete(out, safety.factorRatio, 'overObstacle', runway.availableM);
    },
  };
}

/** Where `estimateTakeOff` ends: some 6 500 m of standard air. */
const LEAST_DENSITY_RATIO = 0.5;

/** Least of what the relation takes. */
const LEAST_LIFT_TO_DRAG = 3;

/**
 * 35 kt: slower than most of the class lift off, so that a tailwind is the larger share of it. Common practice, no source.
 */
const ASSUMED_LIFT_OFF_MS = 18;

const NO_NOTES = { words: '', surface: 'paved', notes: [], speedMs: ASSUMED_LIFT_OFF_MS } as const;

/** Change the two distances by each rule in turn; the reason where one of them refuses, else null. */
function applyRules(
  out: DistanceNumbers,
  rules: readonly DistanceRule[],
  conditions: Conditions,
  onStep: OnStep | undefined,
): RefusedKind | null {
  for (const rule of rules) {
    const amount = rule.amount(conditions);
    const changeRatio = rule.changeRatio(amount, conditions);
    if (changeRatio === Infinity) return ruleRefusal(rule.counts);
    if (changeRatio === 0) continue;
    const isFactor = rule.shareOf === 'each';
    const factorRatio = isFactor ? 1 + changeRatio : 1;
    const addM = isFactor
      ? 0
      : changeRatio * (rule.shareOf === 'groundRoll' ? out.groundRollM : out.overObstacleM);
    out.groundRollM = out.groundRollM * factorRatio + addM;
    out.overObstacleM = out.overObstacleM * factorRatio + addM;
    if (rule.isEstimate) conditions.isEstimate = true;
    onStep?.(rule, amount, factorRatio, addM, out.groundRollM, out.overObstacleM);
  }
  return null;
}

function complete(
  out: DistanceNumbers,
  factorRatio: number,
  against: 'overObstacle' | 'groundRoll',
  availableM: number,
): DistanceNumbers {
  out.requiredM = factorRatio * (against === 'overObstacle' ? out.overObstacleM : out.groundRollM);
  // A note is a share of a distance that is left blank here.
  if (out.requiredM === Infinity) return refuse(out, 'blankCell');
  out.marginM = availableM - out.requiredM;
  return out;
}

function refuse(out: DistanceNumbers, kind: RefusedKind): DistanceNumbers {
  out.kind = kind;
  out.groundRollM = Infinity;
  out.overObstacleM = Infinity;
  out.requiredM = Infinity;
  out.marginM = -Infinity;
  return out;
}
