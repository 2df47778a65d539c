import { flag, missing } from '../store/observation-columns.ts';
import { monthStartEpochS } from './calendar.ts';
import type { RowColumns } from './report-rows.ts';

/** What the reports of a file amount to. */
export interface Tallied {
  observationCount: number;
  /** Observations from which density altitude can be had. */
  usableCount: number;
  /** Why the others cannot serve for it, with counts. */
  unusable: { reason: string; count: number }[];
  /** The best pressure of each usable observation. */
  pressureFrom: { stationCount: number; altimeterSettingCount: number; seaLevelCount: number };
  firstEpochS: number | null;
  lastEpochS: number | null;
}

/** Counts reports as they come. */
export class Tally {
  rowCount = 0;
  readonly #unusable = new Map<string, number>();
  #usableCount = 0;
  #stationCount = 0;
  #altimeterSettingCount = 0;
  #firstEpochS = Infinity;
  #lastEpochS = -Infinity;

  add(rows: RowColumns): void {
    this.rowCount += rows.count;
    this.#addSpan(rows);
    const { columns } = rows;
    let usable = 0;
    let station = 0;
    let setting = 0;
    for (let i = 0; i < rows.count; i++) {
      const temperature = columns.temperatureC100[i] ?? missing;
      const dewPoint = columns.dewPointC100[i] ?? missing;
      const hasStation = columns.stationPressureHpa100[i] !== missing;
      const hasSetting = columns.altimeterSettingHpa100[i] !== missing;
      const isSpoilt = ((columns.flags[i] ?? 0) & flag.dewPointAboveTemperature) !== 0;
      // Temperature, dew point and any pressure, none of them spoilt.
      if (
        temperature !== missing &&
        dewPoint !== missing &&
        !isSpoilt &&
        (hasStation || hasSetting || columns.seaLevelPressureHpa100[i] !== missing)
      ) {
        usable++;
        if (hasStation) station++;
        else if (hasSetting) setting++;
      } else {
        const reason = spoiltFor(temperature, dewPoint, isSpoilt);
        this.#unusable.set(reason, (this.#unusable.get(reason) ?? 0) + 1);
      }
    }
    this.#usableCount += usable;
    this.#stationCount += station;
    this.#altimeterSettingCount += setting;
  }

  result(): Tallied {
    const some = this.rowCount > 0;
    return {
      observationCount: this.rowCount,
      usableCount: this.#usableCount,
      unusable: [...this.#unusable].map(([reason, count]) => ({ reason, count })),
      pressureFrom: {
        stationCount: this.#stationCount,
        altimeterSettingCount: this.#altimeterSettingCount,
        seaLevelCount: this.#usableCount - this.#stationCount - this.#altimeterSettingCount,
      },
      firstEpochS: some ? this.#firstEpochS : null,
      lastEpochS: some ? this.#lastEpochS : null,
    };
  }

  #addSpan({ count, runStarts, runMonths, minute }: RowColumns): void {
    for (let run = 0; run < runMonths.length; run++) {
      const to = runStarts[run + 1] ?? count;
      let first = Infinity;
      let last = -Infinity;
      for (let i = runStarts[run] ?? 0; i < to; i++) {
        const of = minute[i] ?? 0;
        if (of < first) first = of;
        if (of > last) last = of;
      }
      const startEpochS = monthStartEpochS(runMonths[run] ?? 0);
      this.#firstEpochS = Math.min(this.#firstEpochS, startEpochS + first * 60);
      this.#lastEpochS = Math.max(this.#lastEpochS, startEpochS + last * 60);
    }
  }
}

/** The first reason why a report cannot serve for density altitude. */
function spoiltFor(temperature: number, dewPoint: number, isSpoilt: boolean): string {
  if (temperature === missing) return 'no temperature';
  if (dewPoint === missing) return 'no dew point';
  return isSpoilt ? 'dew point above temperature' : 'no pressure';
}
