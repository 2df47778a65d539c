export type TemperatureGroup = { temperatureC: number | null; dewPointC: number | null };

/** Two figures with M for minus; M00 is a temperature just below zero and is 0. */
export function readWholeDegrees(text: string): number | undefined {
  const parts = /^(M?)(\d{2})$/.exec(text);
  if (parts === null) return undefined;
  const size = Number(parts[2]);
  return parts[1] === 'M' && size !== 0 ? -size : size;
}

const MISSING = /^(\/\/|XX|MM?)?$/;

/**
 * Temperature and dew point of the body in whole degrees: "18/16", "M06/M12", "02/" without a dew point, "//M05" without a
 * temperature. Good to half a degree, some 60 ft of density altitude.
 * @source FMH-1 12.6.10; WMO-No. 306 FM 15, 15.11
 */
export function readTemperatures(text: string): TemperatureGroup | undefined {
  const parts = /^(M?\d{2}|\/\/|XX|MM?)?\/(M?\d{2}|\/\/|XX|MM?)?$/.exec(text);
  if (parts === null || text === '/') return undefined;
  const [temperatureC, dewPointC] = [parts[1] ?? '', parts[2] ?? ''].map((half) =>
    MISSING.test(half) ? null : (readWholeDegrees(half) ?? null),
  );
  return { temperatureC: temperatureC ?? null, dewPointC: dewPointC ?? null };
}

/** A sign (1 is minus) and tenths: "1017" is -1.7. */
function signedTenths(sign: string | undefined, tenths: string | undefined): number {
  const size = Number(tenths) / 10;
  return sign === '1' && size !== 0 ? -size : size;
}

/**
 * Temperature and dew point in tenths from the remarks: "T01820159", "T10171022", "T0182" without a dew point.
 * @source FMH-1 12.7.2 d
 */
export function readTenths(text: string): TemperatureGroup | undefined {
  const parts = /^T([01])(\d{3})(?:([01])(\d{3})|\/{4})?$/.exec(text);
  if (parts === null) return undefined;
  return {
    temperatureC: signedTenths(parts[1], parts[2]),
    dewPointC: parts[4] === undefined ? null : signedTenths(parts[3], parts[4]),
  };
}

export type Extremes = { highestC: number; lowestC: number };

/** Highest and lowest temperature of 24 hours, in tenths: "401120084". @source FMH-1 12.7.2, 24-hour maximum and minimum */
export function readDayExtremes(text: string): Extremes | undefined {
  const parts = /^4([01])(\d{3})([01])(\d{3})$/.exec(text);
  if (parts === null) return undefined;
  return { highestC: signedTenths(parts[1], parts[2]), lowestC: signedTenths(parts[3], parts[4]) };
}
