import { InputProblem, requireRange } from '../problem.ts';
import type { TableAxis } from './performance-table.ts';
import type { DistanceChange } from './runway-distances.ts';

export type FactorName =
  | 'weight'
  | 'elevation'
  | 'temperature'
  | 'dryGrass'
  | 'wetGrass'
  | 'wetPaved'
  | 'softGround'
  | 'slope'
  | 'tailwind'
  | 'safety';

/** As it stands beside a factor taken from it. */
export const CAA_LEAFLET = 'UK CAA SafetySense Leaflet 7';

export type RunwayPhase = 'takeOff' | 'landing';

interface PublishedFactor {
  readonly words: string;
  readonly takeOffRatio: number;
  readonly landingRatio: number;
  /** For how much of it the factor is printed; null for something that is there or not. */
  readonly step: { readonly amount: number; readonly unit: string; readonly most: number } | null;
  /** A table with this axis says it better: the factor is refused. */
  readonly axis: TableAxis | null;
}

/**
 * Factors on the distance to, or from, 50 ft where the manual says nothing; several are multiplied together.
 * @source UK CAA SafetySense Leaflet 7, Aeroplane Performance, table of factors. Weight, temperature, dry grass, slope,
 *   tailwind and the safety factors were compared with copies; elevation, wet grass, wet paved and soft ground are from memory
 */
export const PUBLISHED_FACTORS: Readonly<Record<FactorName, PublishedFactor>> = {
  weight: {
    words: "weight above the figure's",
    takeOffRatio: 1.2,
    landingRatio: 1.1,
    step: { amount: 0.1, unit: 'of the weight', most: 0.5 },
    axis: 'massKg',
  },
  elevation: {
    words: "elevation above the figure's",
    takeOffRatio: 1.1,
    landingRatio: 1.05,
    step: { amount: 304.8, unit: 'm', most: 3048 },
    axis: 'pressureAltitudeM',
  },
  temperature: {
    words: "temperature above the figure's",
    takeOffRatio: 1.1,
    landingRatio: 1.05,
    step: { amount: 10, unit: 'C deg', most: 50 },
    axis: 'temperatureC',
  },
  dryGrass: {
    words: 'dry grass up to 20 cm, firm soil',
    takeOffRatio: 1.2,
    landingRatio: 1.15,
    step: null,
    axis: null,
  },
  wetGrass: {
    words: 'wet grass up to 20 cm, firm soil',
    takeOffRatio: 1.3,
    landingRatio: 1.35,
    step: null,
    axis: null,
  },
  wetPaved: { words: 'wet paved surface', takeOffRatio: 1, landingRatio: 1.15, step: null, axis: null },
  softGround: {
    words: 'soft ground or snow, at least',
    takeOffRatio: 1.25,
    landingRatio: 1.25,
    step: null,
    axis: null,
  },
  slope: {
    words: 'slope, uphill at take-off or downhill at landing',
    takeOffRatio: 1.1,
    landingRatio: 1.1,
    step: { amount: 0.02, unit: '', most: 0.1 },
    axis: null,
  },
  tailwind: {
    words: 'tailwind over lift-off or landing speed',
    takeOffRatio: 1.2,
    landingRatio: 1.2,
    step: { amount: 0.1, unit: 'of the speed', most: 0.3 },
    axis: 'headwindMs',
  },
  safety: {
    words: 'safety factor for unfactored figures',
    takeOffRatio: 1.33,
    landingRatio: 1.43,
    step: null,
    axis: null,
  },
};

/**
 * A published factor as a change of distances.
 * Whole steps multiply; between two of them the factor is interpolated, which is never less than compounding would give.
 * @param amount 0 to the most of the factor's step (weight 0.5, elevation 3048 m, temperature 50 C deg, slope 0.1,
 *   tailwind 0.3); 1 for what is there or not. Lighter, lower and colder count as 0: they shorten nothing
 * @param tableAxes axes of the table that the distance came from
 * @throws RangeProblem for an amount out of its range
 * @throws InputProblem when the table has that axis already
 * @source UK CAA SafetySense Leaflet 7, Aeroplane Performance
 * @example weight 20 % above the figure's, at take-off: 1.44
 */
export function factorChange(
  name: FactorName,
  phase: RunwayPhase,
  amount: number,
  tableAxes: readonly TableAxis[],
): DistanceChange {
  const { words, axis } = PUBLISHED_FACTORS[name];
  if (axis !== null && tableAxes.includes(axis)) {
    throw new InputProblem(name, 'the table has this axis already; the factor would count it twice');
  }
  return {
    kind: name === 'safety' ? 'safetyFactor' : 'publishedFactor',
    name: words,
    source: CAA_LEAFLET,
    factorRatio: publishedFactorRatio(name, phase, amount),
    addM: 0,
  };
}

/** The number of `factorChange` alone, for many observations. @throws RangeProblem as it */
export function publishedFactorRatio(name: FactorName, phase: RunwayPhase, amount: number): number {
  const { step, takeOffRatio, landingRatio } = PUBLISHED_FACTORS[name];
  requireRange('amount', amount, step === null ? 1 : 0, step?.most ?? 1, step?.unit ?? '');
  return stepped(phase === 'takeOff' ? takeOffRatio : landingRatio, step === null ? 1 : amount / step.amount);
}

function stepped(perStepRatio: number, steps: number): number {
  // 0.2 / 0.1 must be two whole steps, 0.3 / 0.1 three.
  const whole = Math.floor(steps + 1e-9);
  const rest = Math.max(0, steps - whole);
  return perStepRatio ** whole * (1 + rest * (perStepRatio - 1));
}
