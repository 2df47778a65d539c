import { vapourPressureHpa, VAPOUR_GAS_RATIO } from '../atmosphere/humidity.ts';
import { GAS_CONSTANT_DRY_AIR, SEA_LEVEL_DENSITY_KG_M3 } from '../atmosphere/standard-atmosphere.ts';
import { requireRange } from '../problem.ts';
import { ZERO_CELSIUS_K } from '../units/constants.ts';
import { gaggFerrarPowerRatio } from './power.ts';
import type { DistanceChange } from './runway-distances.ts';

export interface HumidityStep {
  /** Enter the manual's table, made for dry air, at this temperature: dry air so warm is as thin as the moist air. */
  readonly tableTemperatureC: number;
  /** Estimate of what vapour takes from the engine beyond that; 0 in dry air, 0.02 on a sultry day. */
  readonly powerLossRatio: number;
  /** The estimate as a change of distances, 1 or more. */
  readonly change: DistanceChange;
}

/**
 * Humidity as a step of its own, for tables that know temperature and pressure altitude only.
 * For wing and propeller the virtual temperature is exact. The engine breathes oxygen with the dry air alone, which is
 * thinner again by about 0.622 e/p: that loss, by Gagg and Ferrar's relation, is an estimate, and the distances are
 * taken as inverse to power. Leaves out a mixture that becomes too rich in moist air.
 * @param pressureHpa  station pressure, 400 to 1100 hPa
 * @param temperatureC −45 to 60 degC
 * @param dewPointC    −45 degC to the temperature
 * @throws RangeProblem naming the argument out of its range
 * @source WMO-No. 8 (2018) annex 4.A and 4.B for vapour; R. F. Gagg and E. V. Farrar 1934 for power against density
 * @example 1000 hPa, 35 degC, dew point 25: the table is entered at 38.8 degC, and 2.3 % of the power is lost besides
 */
export function humidityStep(pressureHpa: number, temperatureC: number, dewPointC: number): HumidityStep {
  requireRange('pressureHpa', pressureHpa, 400, 1100, 'hPa');
  requireRange('temperatureC', temperatureC, -45, 60, 'degC');
  requireRange('dewPointC', dewPointC, -45, temperatureC, 'degC');
  const { tableTemperatureC, powerLossFactor } = humidAirInto(
    humidAir(),
    pressureHpa,
    temperatureC,
    dewPointC,
  );
  return {
    tableTemperatureC,
    powerLossRatio: 1 - 1 / powerLossFactor,
    change: {
      kind: 'estimate',
      name: POWER_LOSS_NAME,
      source: POWER_LOSS_SOURCE,
      factorRatio: powerLossFactor,
      addM: 0,
    },
  };
}

export const POWER_LOSS_NAME = 'power lost to humidity';
export const POWER_LOSS_SOURCE = 'Gagg and Ferrar 1934, at the density of the dry air';

/** What humidity does to wing, propeller and engine; used again for each observation, so that none makes an object. */
export interface HumidAir {
  tableTemperatureC: number;
  /** Density of the moist air over 1.225 kg/m3. */
  densityRatio: number;
  /** Power in dry air so thin over power in the moist air, 1 or more. */
  powerLossFactor: number;
}

export function humidAir(): HumidAir {
  return { tableTemperatureC: NaN, densityRatio: NaN, powerLossFactor: NaN };
}

/**
 * The numbers of `humidityStep` into a given object, without checks of its own: for many observations, whose ranges the
 * caller has held against those of `humidityStep`.
 * @param dewPointC NaN where it is not known, or below −45 degC, where vapour weighs less than the air's last digit: dry air
 */
export function humidAirInto(
  out: HumidAir,
  pressureHpa: number,
  temperatureC: number,
  dewPointC: number,
): HumidAir {
  // Deep below sea level the enhancement factor is that of its highest known pressure: it differs in the fourth place.
  const vapourRatio =
    dewPointC >= COLDEST_DEW_C
      ? vapourPressureHpa(Math.min(pressureHpa, HIGHEST_VAPOUR_HPA), dewPointC) / pressureHpa
      : 0;
  const lightness = 1 - (1 - VAPOUR_GAS_RATIO) * vapourRatio;
  const virtualK = (temperatureC + ZERO_CELSIUS_K) / lightness;
  const moistRatio = (pressureHpa * 100) / (GAS_CONSTANT_DRY_AIR * virtualK * SEA_LEVEL_DENSITY_KG_M3);
  const dryRatio = (moistRatio * (1 - vapourRatio)) / lightness;
  out.tableTemperatureC = vapourRatio === 0 ? temperatureC : virtualK - ZERO_CELSIUS_K;
  out.densityRatio = moistRatio;
  out.powerLossFactor =
    vapourRatio === 0 || moistRatio > THICKEST_RATIO
      ? 1
      : Math.max(1, gaggFerrarPowerRatio(moistRatio) / gaggFerrarPowerRatio(dryRatio));
  return out;
}

const COLDEST_DEW_C = -45;
const HIGHEST_VAPOUR_HPA = 1100;
/** Where Gagg and Ferrar's relation ends; air so thick is too cold to hold vapour that counts. */
const THICKEST_RATIO = 1.4;
