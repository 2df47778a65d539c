import { moistAirDensityKgM3 } from '../atmosphere/air-density.ts';
import { vapourPressureHpa, VAPOUR_GAS_RATIO, virtualTemperatureC } from '../atmosphere/humidity.ts';
import { SEA_LEVEL_DENSITY_KG_M3 } from '../atmosphere/standard-atmosphere.ts';
import { requireRange } from '../problem.ts';
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
  const tableTemperatureC = virtualTemperatureC(pressureHpa, temperatureC, dewPointC);
  const vapourRatio = vapourPressureHpa(pressureHpa, dewPointC) / pressureHpa;
  const moistRatio = moistAirDensityKgM3(pressureHpa, temperatureC, dewPointC) / SEA_LEVEL_DENSITY_KG_M3;
  const dryRatio = (moistRatio * (1 - vapourRatio)) / (1 - (1 - VAPOUR_GAS_RATIO) * vapourRatio);
  const powerLossRatio = 1 - gaggFerrarPowerRatio(dryRatio) / gaggFerrarPowerRatio(moistRatio);
  return {
    tableTemperatureC,
    powerLossRatio,
    change: {
      kind: 'estimate',
      name: 'power lost to humidity',
      source: 'Gagg and Ferrar 1934, at the density of the dry air',
      factorRatio: Math.max(1, 1 / (1 - powerLossRatio)),
      addM: 0,
    },
  };
}
