import { individualsLimits, type IndividualsLimits } from '../../numeric/control-chart.ts';
import { studentQuantile } from '../../numeric/student.ts';
import { requireRange } from '../../problem.ts';

/** One flight's fuel by refill and its time. */
export interface TimedRefill {
  /** 0.1 to 1000 L. */
  readonly refillL: number;
  /** 300 s to 86400 s. */
  readonly flightS: number;
  /** Standard deviation of the refill, state and measure together, 0 to 100 L. */
  readonly refillSdL: number;
}

/** Fuel flow from shutdown to shutdown: taxi and climb are in it. */
export interface LearnedFlow {
  readonly flightCount: number;
  readonly meanLPerH: number;
  /** The mean lies between these nine times in ten; null from one flight alone. */
  readonly lowLPerH: number | null;
  readonly highLPerH: number | null;
  /** What a flight like these may burn: above it one time in twenty. null from one flight alone. */
  readonly nextFlightHighLPerH: number | null;
  readonly eachLPerH: readonly number[];
  /** Of the chart of the single flights; null from one flight alone. */
  readonly limits: IndividualsLimits | null;
}

/**
 * Fuel flow from refill over time alone, never through the gauge. Flights differ more than their refills are wrong, so
 * the spread between flights is estimated too, and the mean's band is widened for the few flights behind it.
 * @param scaleSdRatio of what the refills were measured with, common to all: 0 to 0.2
 * @throws RangeProblem for a refill, a time or an uncertainty outside its range
 * @source R. DerSimonian, N. Laird, Meta-analysis in clinical trials, 1986 (spread between flights); J. Hartung,
 *         G. Knapp, A refined method, Statist. Med. 20, 2001 (the band), never narrower than the plain one
 */
export function flowFromRefills(refills: readonly TimedRefill[], scaleSdRatio: number): LearnedFlow | null {
  requireRange('scaleSdRatio', scaleSdRatio, 0, 0.2, '');
  refills.forEach(({ refillL, flightS, refillSdL }, index) => {
    const at = `refills[${String(index)}]`;
    requireRange(`${at}.refillL`, refillL, 0.1, 1000, 'L');
    requireRange(`${at}.flightS`, flightS, 300, 86_400, 's');
    requireRange(`${at}.refillSdL`, refillSdL, 0, 100, 'L');
  });
  if (refills.length === 0) return null;
  const flows = refills.map(({ refillL, flightS }) => refillL / (flightS / 3600));
  const variances = refills.map(({ refillSdL, flightS }) =>
    Math.max(1e-12, (refillSdL / (flightS / 3600)) ** 2),
  );
  const between = spreadBetween(flows, variances);
  const weights = variances.map((variance) => 1 / (variance + between));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const meanLPerH = flows.reduce((sum, flow, index) => sum + flow * (weights[index] ?? 0), 0) / total;
  const common = { flightCount: flows.length, meanLPerH, eachLPerH: flows };
  if (flows.length < 2)
    return { ...common, lowLPerH: null, highLPerH: null, nextFlightHighLPerH: null, limits: null };
  const degrees = flows.length - 1;
  const spread = flows.reduce((sum, flow, index) => sum + (weights[index] ?? 0) * (flow - meanLPerH) ** 2, 0);
  const meanVariance = Math.max(1, spread / degrees) / total;
  const scaleVariance = (meanLPerH * scaleSdRatio) ** 2;
  const reach = studentQuantile(0.95, degrees);
  const band = reach * Math.sqrt(meanVariance + scaleVariance);
  return {
    ...common,
    lowLPerH: Math.max(0, meanLPerH - band),
    highLPerH: meanLPerH + band,
    nextFlightHighLPerH: meanLPerH + reach * Math.sqrt(meanVariance + scaleVariance + between),
    limits: individualsLimits(flows),
  };
}

/** Variance between flights beyond what the refills' own errors explain, by the method of moments. */
function spreadBetween(flows: readonly number[], variances: readonly number[]): number {
  if (flows.length < 2) return 0;
  const weights = variances.map((variance) => 1 / variance);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const squares = weights.reduce((sum, weight) => sum + weight * weight, 0);
  const mean = flows.reduce((sum, flow, index) => sum + flow * (weights[index] ?? 0), 0) / total;
  const q = flows.reduce((sum, flow, index) => sum + (weights[index] ?? 0) * (flow - mean) ** 2, 0);
  return Math.max(0, (q - (flows.length - 1)) / (total - squares / total));
}
