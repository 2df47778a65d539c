import { fieldDensityAltitudeM } from '../field-density-altitude.ts';

/** Air and wind of one reading a row, all columns alike in length. NaN where it was not reported. */
export interface AirRows {
  /** At the field's elevation. */
  readonly densityAltitudeM: Float64Array;
  readonly temperatureC: Float64Array;
  /** At most the temperature. */
  readonly dewPointC: Float64Array;
  /** Altimeter setting: the same at the station and at the field. */
  readonly settingHpa: Float64Array;
  /** True; NaN beside a speed is a wind of variable direction. */
  readonly windFromDeg: Float64Array;
  /** Mean. */
  readonly windMs: Float64Array;
  readonly gustMs: Float64Array;
}

/** The same for every hour of a record's local clock. */
export interface HourColumns extends AirRows {
  /** Hours since 1970-01-01 00:00 on the field's clock, rising, each at most once. */
  readonly localHour: Int32Array;
}

/** Rows of a record picked out by their places. */
export function airAt(hours: AirRows, place: Int32Array): AirRows {
  // A loop: Float64Array.from with a function takes ten times as long, and this runs over a hundred thousand rows.
  const pick = (column: Float64Array) => {
    const out = new Float64Array(place.length);
    for (let row = 0; row < out.length; row++) out[row] = column[place[row] ?? 0] ?? NaN;
    return out;
  };
  return {
    densityAltitudeM: pick(hours.densityAltitudeM),
    temperatureC: pick(hours.temperatureC),
    dewPointC: pick(hours.dewPointC),
    settingHpa: pick(hours.settingHpa),
    windFromDeg: pick(hours.windFromDeg),
    windMs: pick(hours.windMs),
    gustMs: pick(hours.gustMs),
  };
}

/** One state of the air that nobody observed: what a rule or a forecast asks about. */
export interface AirState {
  readonly temperatureC: number;
  /** Above the temperature it counts as the temperature. */
  readonly dewPointC: number;
  readonly settingHpa: number;
  readonly windFromDeg: number;
  readonly windMs: number;
}

/**
 * States as rows, with the density altitude that each has at a field.
 * @param elevationM -500 to 6,000 m
 * @throws RangeProblem naming fieldElevationM
 */
export function airOf(states: readonly AirState[], elevationM: number): AirRows {
  const column = (of: (state: AirState) => number) => Float64Array.from(states, of);
  return {
    densityAltitudeM: column(({ temperatureC, dewPointC, settingHpa }) =>
      fieldDensityAltitudeM(
        {
          temperatureC,
          dewPointC,
          altimeterSettingHpa: settingHpa,
          stationPressureHpa: NaN,
          seaLevelPressureHpa: NaN,
        },
        elevationM,
        elevationM,
      ),
    ),
    temperatureC: column((state) => state.temperatureC),
    dewPointC: column((state) => Math.min(state.dewPointC, state.temperatureC)),
    settingHpa: column((state) => state.settingHpa),
    windFromDeg: column((state) => state.windFromDeg),
    windMs: column((state) => state.windMs),
    gustMs: new Float64Array(states.length).fill(NaN),
  };
}
