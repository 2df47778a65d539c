import { minuteOfMonth } from './calendar.ts';
import { fixedDigits } from './digits.ts';

/** Date and time as a file prints them, before any zone is taken off. */
export interface Stamp {
  year: number;
  month: number;
  /** Minute of the month, or -1 where there is no such moment. */
  minute: number;
}

/** Read 2025-01-01T00:52 (or with a blank, with seconds) into `into`; its minute is -1 where it is none. */
export function readIsoStamp(bytes: Uint8Array, from: number, to: number, into: Stamp): void {
  into.year = fixedDigits(bytes, from, 4);
  into.month = fixedDigits(bytes, from + 5, 2);
  into.minute =
    to - from < 16 || bytes[from + 4] !== 45 || bytes[from + 7] !== 45 || bytes[from + 13] !== 58
      ? -1
      : minuteOfMonth(
          into.year,
          into.month,
          fixedDigits(bytes, from + 8, 2),
          fixedDigits(bytes, from + 11, 2),
          fixedDigits(bytes, from + 14, 2),
        );
}
