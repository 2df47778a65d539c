import type { OutputOf } from '../../../main/requests/table.ts';

type SunLine = OutputOf<'weather.season'>['sun'][number];

/** Sunrise and sunset in the middle of each month. */
export function daylightByMonth(
  sun: readonly SunLine[],
): { sunriseH: number | null; sunsetH: number | null }[] {
  return Array.from({ length: 12 }, (_, month) => {
    const middle = sun.reduce<SunLine | null>(
      (best, line) =>
        best === null || Math.abs(line.monthOfYear - month - 0.5) < Math.abs(best.monthOfYear - month - 0.5)
          ? line
          : best,
      null,
    );
    return { sunriseH: middle?.sunriseH ?? null, sunsetH: middle?.sunsetH ?? null };
  });
}
