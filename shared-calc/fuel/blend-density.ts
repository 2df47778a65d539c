import { rectangularSd } from '../numeric/bounded-sd.ts';
import { requireRange } from '../problem.ts';
import { fuelDensityKgPerL } from './weighed-volume.ts';

/** A fuel by what it is, in place of a density that somebody typed. */
export type FuelBlend =
  | { kind: 'avgas' }
  /** Ethanol by volume; up to 10 % lie inside EN 228. */
  | { kind: 'motor gasoline'; ethanolPercent: number }
  /** Its density at 15 degC is known, from the manual, the delivery note or a hydrometer. */
  | { kind: 'own'; at15KgPerL: number };

/** A density and how well it is known (standard uncertainty), kg/L. */
export interface BlendDensity {
  readonly densityKgPerL: number;
  readonly sdKgPerL: number;
}

/** Within which a fuel's density at 15 degC lies, kg/L, and whose figure that is. */
export interface DensityRange {
  readonly leastKgPerL: number;
  readonly mostKgPerL: number;
  readonly source: string;
}

/** The temperatures for which the expansion of gasoline is known, degC. */
export const FUEL_LEAST_C = -40;
export const FUEL_MOST_C = 60;

/** ASTM D910 wants the density of aviation gasoline reported and sets no limits to it (from memory). */
export const DENSITY_RANGES: Readonly<Record<'avgas' | 'motor gasoline', DensityRange>> = {
  avgas: { leastKgPerL: 0.69, mostKgPerL: 0.725, source: 'common practice, no standard' },
  'motor gasoline': { leastKgPerL: 0.72, mostKgPerL: 0.775, source: 'EN 228' },
};

/** Neat fuel ethanol: specific gravity 0.796 at 60 degF times water's 0.999 kg/L. */
const ETHANOL_KG_PER_L = 0.7952;
const ETHANOL_SD_KG_PER_L = 0.001;
/** Expansion of ethanol for one degree; its volume beside gasoline's does not add up exactly. */
const ETHANOL_PER_C = 0.00109;
const MIXING_SD_KG_PER_L = 0.001;
/** The most that EN 228 lets in. */
const IN_STANDARD_PERCENT = 10;

/** A hydrometer or a delivery note. */
const OWN_SD_KG_PER_L = 0.0005;
/** A thermometer held into the tank or the drained sample; and where nobody measured, 20 degrees either side of 15. */
const MEASURED_SD_C = 1.2;
const UNMEASURED_HALF_WIDTH_C = 20;

/**
 * The density of a fuel of a kind at its temperature, with its standard uncertainty.
 *
 * The range of the kind counts as equally likely all over. Without a temperature the density is that at 15 degC and its
 * doubt covers -5 to 35 degC. Above 10 % of ethanol the fuel is gasoline of EN 228 with neat ethanol added by volume.
 * @param blend        ethanol 0 to 100 % by volume; own density at 15 degC 0.653 to 0.838 kg/L
 * @param temperatureC the fuel's own, -40 to 60 degC; null where nobody measured it
 * @throws RangeProblem naming ethanolPercent, at15KgPerL or temperatureC
 * @source EN 228 for the range at 15 degC (as a testing laboratory's list of its requirements gives it); ethanol: U.S.
 *   Department of Energy, fuel property comparison; expansion: `fuelDensityKgPerL`; GUM 4.3.7 for the rectangle. The range
 *   of aviation gasoline, the expansion of ethanol and the doubts of hydrometer and thermometer are from memory or common
 *   practice.
 * @example motor gasoline without a temperature: 0.7475 kg/L, standard uncertainty 0.019
 */
export function blendDensity(blend: FuelBlend, temperatureC: number | null): BlendDensity {
  if (temperatureC !== null) requireRange('temperatureC', temperatureC, FUEL_LEAST_C, FUEL_MOST_C, 'degC');
  const at15 = blendAt15(blend);
  const fuelC = temperatureC ?? 15;
  const at = (otherC: number) => atTemperature(blend, at15.densityKgPerL, otherC);
  const middleC = Math.min(FUEL_MOST_C - 0.5, Math.max(FUEL_LEAST_C + 0.5, fuelC));
  const perC = at(middleC - 0.5) - at(middleC + 0.5);
  const sdC =
    temperatureC === null ? rectangularSd(-UNMEASURED_HALF_WIDTH_C, UNMEASURED_HALF_WIDTH_C) : MEASURED_SD_C;
  return { densityKgPerL: at(fuelC), sdKgPerL: Math.hypot(at15.sdKgPerL, perC * sdC) };
}

function blendAt15(blend: FuelBlend): BlendDensity {
  if (blend.kind === 'own') {
    requireRange('at15KgPerL', blend.at15KgPerL, 0.653, 0.838, 'kg/L');
    return { densityKgPerL: blend.at15KgPerL, sdKgPerL: OWN_SD_KG_PER_L };
  }
  const { leastKgPerL, mostKgPerL } = DENSITY_RANGES[blend.kind];
  const base = (leastKgPerL + mostKgPerL) / 2;
  const baseSd = rectangularSd(leastKgPerL, mostKgPerL);
  const added = addedShare(blend);
  if (added === 0) return { densityKgPerL: base, sdKgPerL: baseSd };
  return {
    densityKgPerL: (1 - added) * base + added * ETHANOL_KG_PER_L,
    sdKgPerL: Math.hypot((1 - added) * baseSd, added * ETHANOL_SD_KG_PER_L, MIXING_SD_KG_PER_L),
  };
}

/** Share of neat ethanol that has to be added to gasoline with 10 % of it. */
function addedShare(blend: FuelBlend): number {
  if (blend.kind !== 'motor gasoline') return 0;
  const { ethanolPercent } = blend;
  requireRange('ethanolPercent', ethanolPercent, 0, 100, '%');
  return Math.max(0, (ethanolPercent - IN_STANDARD_PERCENT) / (100 - IN_STANDARD_PERCENT));
}

/** Gasoline and the ethanol added to it expand each by its own. */
function atTemperature(blend: FuelBlend, at15KgPerL: number, fuelC: number): number {
  const added = addedShare(blend);
  if (added === 0) return fuelDensityKgPerL(at15KgPerL, 15, fuelC);
  const { leastKgPerL, mostKgPerL } = DENSITY_RANGES['motor gasoline'];
  const base = (leastKgPerL + mostKgPerL) / 2;
  const baseVolume = base / fuelDensityKgPerL(base, 15, fuelC);
  const ethanolVolume = Math.exp(ETHANOL_PER_C * (fuelC - 15));
  return at15KgPerL / ((1 - added) * baseVolume + added * ethanolVolume);
}
