import type { GaugeReading } from '../fill-run.ts';

/**
 * A flight between two readings, and what was bought to come back to the state in which it began. The fuel bought is
 * the fuel burned as far as that state repeats.
 */
export interface RefillCheckRecord {
  readonly kind: 'refill';
  readonly id: string;
  readonly tankId: string;
  /** A day of the calendar, '2026-09-12'. */
  readonly checkedOn: string;
  readonly attitude: 'ground' | 'level flight';
  readonly before: GaugeReading;
  readonly after: GaugeReading;
  /** From reading to reading; null where it was not written down, and then nothing is learned of the fuel flow. */
  readonly flightS: number | null;
  readonly refillL: number;
  /** How closely the state is met each time it is filled to, as a standard deviation. */
  readonly stateSdL: number;
  /** What the refill was measured with; null for a fuel station's pump. */
  readonly containerId: string | null;
  readonly note: string;
  readonly withdrawn: boolean;
}

/** What the gauge shows with nothing usable left in the tank: it should read zero. */
export interface ZeroCheckRecord {
  readonly kind: 'zero';
  readonly id: string;
  readonly tankId: string;
  readonly checkedOn: string;
  readonly attitude: 'ground' | 'level flight';
  readonly reading: GaugeReading;
  readonly note: string;
  readonly withdrawn: boolean;
}

export type FuelCheckRecord = RefillCheckRecord | ZeroCheckRecord;
