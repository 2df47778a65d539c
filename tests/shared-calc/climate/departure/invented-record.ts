import type { HourColumns } from '../../../../shared-calc/climate/departure/air-rows.ts';

/** The same formulas as in departure-odds.py: eight years of hours by UTC, so that two languages can count the same days. */
export function inventedRecord(): HourColumns {
  const firstHour = Date.UTC(2012, 0, 1) / 3_600_000;
  const count = (Date.UTC(2020, 0, 1) - Date.UTC(2012, 0, 1)) / 3_600_000;
  const kept: number[] = [];
  for (let i = 0; i < count; i++) if (i % 41 !== 0) kept.push(i);
  const column = (of: (i: number) => number) => Float64Array.from(kept, of);
  const temperature = (i: number) =>
    15 +
    12 * Math.sin((2 * Math.PI * (i / 24 - 105)) / 365.25) +
    7 * Math.sin((2 * Math.PI * ((i % 24) - 9)) / 24) +
    (((i * 7919) % 97) - 48) / 12;
  const speed = (i: number) => (i % 29 === 0 ? NaN : ((i * 31) % 13) * 0.7);
  return {
    localHour: Int32Array.from(kept, (i) => firstHour + i),
    temperatureC: column(temperature),
    dewPointC: column((i) => temperature(i) - 8),
    settingHpa: column((i) => 1013 + (((i * 17) % 31) - 15) / 2),
    densityAltitudeM: column((i) => 1372 + 36 * (temperature(i) - 6)),
    windFromDeg: column((i) => (i % 37 === 0 ? NaN : ((i * 53) % 36) * 10)),
    windMs: column(speed),
    gustMs: column((i) => (i % 3 === 0 ? 1.4 * speed(i) : NaN)),
  };
}
