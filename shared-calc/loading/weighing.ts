import { InputProblem, requireRange } from '../problem.ts';
import { requireArm, requireMass } from './require-arm.ts';

/** One scale under one point of the aeroplane. */
export interface ScaleReading {
  readonly name: string;
  readonly scaleKg: number;
  /** Chocks, jacks and whatever else stands on the scale. */
  readonly tareKg: number;
  readonly armM: number;
  readonly scaleSdKg: number;
  readonly armSdM: number;
}

/**
 * Something that was aboard and does not belong to the empty weight (fuel above the unusable, a charger), or that
 * belongs to it and was not aboard (drained unusable fuel, oil).
 */
export interface WeighingCorrection {
  readonly name: string;
  readonly sense: 'take off' | 'add';
  readonly massKg: number;
  readonly armM: number;
  readonly massSdKg: number;
}

/** Empty weight by a weighing, with its uncertainty from the scales and the measured arms. */
export interface WeighingResult {
  readonly massKg: number;
  readonly momentKgM: number;
  readonly armM: number;
  readonly massSdKg: number;
  readonly armSdM: number;
  /** Of mass and arm, -1 to 1. */
  readonly correlation: number;
}

/**
 * Empty weight and centre of gravity from scale readings, with tare, for any gear and any datum.
 *
 * With fuel drained there is nothing to correct but the unusable fuel, where the manual counts it. With fuel aboard,
 * measured or full, take it off by its mass and arm (`fuelAboard`). Variances are propagated to first order; the scales
 * and the arms are taken as independent of each other.
 * @param readings    at least two, at least two different arms; scale and tare 0 to 50,000 kg, tare at most the scale
 * @param corrections masses 0 to 50,000 kg
 * @throws RangeProblem; InputProblem for a single point, or where the corrections leave nothing
 * @source FAA-H-8083-1B, chapter 3 (weighing, tare, CG by table); JCGM 100:2008 (GUM), 5.1.2, for the uncertainties
 */
export function emptyFromScales(
  readings: readonly ScaleReading[],
  corrections: readonly WeighingCorrection[] = [],
): WeighingResult {
  if (new Set(readings.map((reading) => reading.armM)).size < 2) {
    throw new InputProblem('readings', 'an aeroplane stands on at least two arms');
  }
  let massKg = 0;
  let momentKgM = 0;
  readings.forEach((reading, i) => {
    const field = `readings[${String(i)}]`;
    requireMass(`${field}.scaleKg`, reading.scaleKg);
    requireRange(`${field}.tareKg`, reading.tareKg, 0, reading.scaleKg, 'kg');
    requireArm(`${field}.armM`, reading.armM);
    requireRange(`${field}.scaleSdKg`, reading.scaleSdKg, 0, 1000, 'kg');
    requireRange(`${field}.armSdM`, reading.armSdM, 0, 1, 'm');
    massKg += reading.scaleKg - reading.tareKg;
    momentKgM += (reading.scaleKg - reading.tareKg) * reading.armM;
  });
  corrections.forEach((correction, i) => {
    const field = `corrections[${String(i)}]`;
    requireMass(`${field}.massKg`, correction.massKg);
    requireArm(`${field}.armM`, correction.armM);
    requireRange(`${field}.massSdKg`, correction.massSdKg, 0, 1000, 'kg');
    const signedKg = correction.sense === 'add' ? correction.massKg : -correction.massKg;
    massKg += signedKg;
    momentKgM += signedKg * correction.armM;
  });
  if (massKg <= 0) throw new InputProblem('readings', `a net mass of ${String(massKg)} kg is none`);
  const armM = momentKgM / massKg;
  let varianceMass = 0;
  let varianceArm = 0;
  let covariance = 0;
  const doubt = (sdKg: number, leverM: number) => {
    varianceMass += sdKg * sdKg;
    varianceArm += ((sdKg * leverM) / massKg) ** 2;
    covariance += (sdKg * sdKg * leverM) / massKg;
  };
  for (const reading of readings) {
    doubt(reading.scaleSdKg, reading.armM - armM);
    varianceArm += (((reading.scaleKg - reading.tareKg) * reading.armSdM) / massKg) ** 2;
  }
  for (const correction of corrections) doubt(correction.massSdKg, correction.armM - armM);
  const massSdKg = Math.sqrt(varianceMass);
  const armSdM = Math.sqrt(varianceArm);
  const product = massSdKg * armSdM;
  return { massKg, momentKgM, armM, massSdKg, armSdM, correlation: product > 0 ? covariance / product : 0 };
}

/**
 * The correction for fuel that was aboard while weighing.
 * @param volumeL      all fuel aboard less what the manual counts as empty weight (the unusable), 0 to 5,000 L
 * @param densityKgPerL 0.6 to 1.1; of the fuel as it was
 * @param volumeSdL    standard uncertainty: a dipstick's, or how full "full" is
 * @throws RangeProblem
 */
export function fuelAboard(
  name: string,
  volumeL: number,
  densityKgPerL: number,
  armM: number,
  volumeSdL: number,
): WeighingCorrection {
  requireRange('volumeL', volumeL, 0, 5000, 'L');
  requireRange('densityKgPerL', densityKgPerL, 0.6, 1.1, 'kg/L');
  requireArm('armM', armM);
  requireRange('volumeSdL', volumeSdL, 0, 500, 'L');
  return {
    name,
    sense: 'take off',
    massKg: volumeL * densityKgPerL,
    armM,
    massSdKg: volumeSdL * densityKgPerL,
  };
}

/**
 * Centre of gravity from the mass on the third wheel alone.
 * @param gear        'nose': the third wheel is ahead of the main wheels; 'tail': behind them
 * @param mainsArmM   arm of the main wheels, within 100 m: positive where the datum is ahead of them
 * @param wheelbaseM  from main wheels to third wheel, 0.1 to 50 m
 * @param thirdWheelKg net of tare, 0 to the total
 * @param totalKg     net of tare, 0.1 to 50,000 kg
 * @returns m aft of the datum
 * @throws RangeProblem
 * @source FAA-H-8083-1B, chapter 3: CG = D - F L / W (nose wheel), D + R L / W (tail wheel); D negative where the
 *         datum is behind the main wheels
 */
export function cgFromThirdWheelM(
  gear: 'nose' | 'tail',
  mainsArmM: number,
  wheelbaseM: number,
  thirdWheelKg: number,
  totalKg: number,
): number {
  requireArm('mainsArmM', mainsArmM);
  requireRange('wheelbaseM', wheelbaseM, 0.1, 50, 'm');
  requireRange('totalKg', totalKg, 0.1, 50_000, 'kg');
  requireRange('thirdWheelKg', thirdWheelKg, 0, totalKg, 'kg');
  const sense = gear === 'nose' ? -1 : 1;
  return mainsArmM + (sense * thirdWheelKg * wheelbaseM) / totalKg;
}
