import { isaPressureHpa } from '../atmosphere/standard-atmosphere.ts';
import type { Conditions } from './distance-rules.ts';
import { humidAir, humidAirInto } from './humidity-step.ts';
import type { HumidAir } from './humidity-step.ts';
import { AXIS_RANGES } from './performance-table.ts';
import type { WindCredit } from './wind.ts';

/** Air and wind as one observation gives them, turned into what tables and rules are read with. */
export interface AirReader {
  readonly humid: HumidAir;
  readonly conditions: Conditions;
  /** @returns false, with nothing set, where something but the dew point is missing or out of range */
  set(
    massKg: number,
    pressureAltitudeM: number,
    temperatureC: number,
    dewPointC: number,
    headwindMs: number,
    credit: WindCredit,
  ): boolean;
}

/** Holds its results until the next `set`; makes no objects after this. */
export function airReader(): AirReader {
  const humid = humidAir();
  const conditions: Conditions = {
    pressureAltitudeM: NaN,
    temperatureC: NaN,
    headwindMs: NaN,
    powerLossFactor: NaN,
    isHeld: false,
    isEstimate: false,
  };
  return {
    humid,
    conditions,
    set(massKg, pressureAltitudeM, temperatureC, dewPointC, headwindMs, credit) {
      if (
        !isWithin(massKg, AXIS_RANGES.massKg) ||
        !isWithin(pressureAltitudeM, AXIS_RANGES.pressureAltitudeM) ||
        !isWithin(temperatureC, AIR_TEMPERATURE) ||
        !isWithin(headwindMs, AXIS_RANGES.headwindMs) ||
        dewPointC > temperatureC
      )
        return false;
      humidAirInto(humid, isaPressureHpa(pressureAltitudeM), temperatureC, dewPointC);
      conditions.pressureAltitudeM = pressureAltitudeM;
      conditions.temperatureC = humid.tableTemperatureC;
      conditions.headwindMs = headwindMs * (headwindMs >= 0 ? credit.headwindRatio : credit.tailwindRatio);
      conditions.powerLossFactor = humid.powerLossFactor;
      conditions.isHeld = false;
      conditions.isEstimate = false;
      return true;
    },
  };
}

/** As far as vapour is known; hotter than any air that was measured. */
export const AIR_TEMPERATURE = { min: -60, max: 60 } as const;

/** False for NaN. */
function isWithin(value: number, { min, max }: { readonly min: number; readonly max: number }): boolean {
  return value >= min && value <= max;
}
