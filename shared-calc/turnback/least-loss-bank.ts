import { requireRange } from '../problem.ts';
import { RAD_PER_DEG } from '../units/constants.ts';

/**
 * What a simplified model of the turn back concluded. Theory of one paper; nobody's advice.
 * @source D. F. Rogers, The Possible 'Impossible' Turn, Journal of Aircraft 32(2), 1995, abstract
 */
export const ROGERS_1995 = {
  /** Times the stall speed in the turn. */
  speedRatio: 1.05,
  leastHeadingChangeDeg: 190,
  mostHeadingChangeDeg: 220,
} as const;

/** Whether the speed goes up with the bank, at a fixed margin over the stall in the turn, or stays as it is. */
export type TurnSpeed = 'fixedMarginOverStall' | 'bestGlideSpeed';

/**
 * Height lost per radian of turn at a bank, against the least at any bank: 1 at the bank of least loss.
 * At a fixed margin over the stall, lift and drag coefficients stay and the loss goes with 1 / sin(2 bank). At best glide
 * speed the induced half of the drag grows with the load factor squared: (1 + n^2) / tan(bank).
 * @param bankDeg 1 to 80
 * @returns ratio, at least 1
 * @throws RangeProblem outside it
 * @source parabolic drag polar; for the fixed margin D. F. Rogers 1995
 */
export function lossAgainstLeastRatio(bankDeg: number, speed: TurnSpeed): number {
  requireRange('bankDeg', bankDeg, 1, 80, 'degrees');
  return lossShape(bankDeg, speed) / lossShape(theoreticalBankOfLeastLossDeg(speed), speed);
}

/**
 * The bank at which theory loses the least height per degree of turn. NEVER ADVICE: near the ground a steep gliding turn
 * close to the stall kills, and the model knows nothing of gusts, surprise or rolling in and out.
 * @returns degrees, to 0.0001
 */
export function theoreticalBankOfLeastLossDeg(speed: TurnSpeed): number {
  let from = 1;
  let to = 80;
  while (to - from > 1e-5) {
    const third = (to - from) / 3;
    if (lossShape(from + third, speed) < lossShape(to - third, speed)) to -= third;
    else from += third;
  }
  return (from + to) / 2;
}

function lossShape(bankDeg: number, speed: TurnSpeed): number {
  const bankRad = bankDeg * RAD_PER_DEG;
  const n = 1 / Math.cos(bankRad);
  return speed === 'bestGlideSpeed' ? (1 + n * n) / Math.tan(bankRad) : (n * n) / Math.tan(bankRad);
}
