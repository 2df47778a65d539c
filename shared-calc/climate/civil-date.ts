/** A day of the calendar. */
export interface CivilDate {
  year: number;
  /** From 0. */
  month: number;
  /** From 1. */
  day: number;
}

/**
 * The date of a day counted from 1970-01-01.
 * @see dayNumber
 * @source Fliegel and Van Flandern 1968, "A machine algorithm for processing calendar dates", in the form with years
 * that begin in March and eras of 400 years; good for every day of the proleptic Gregorian calendar
 */
export function civilDate(dayNumber: number): CivilDate {
  const shifted = dayNumber + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const monthFromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const month = monthFromMarch < 10 ? monthFromMarch + 2 : monthFromMarch - 10;
  return {
    year: yearOfEra + era * 400 + (month < 2 ? 1 : 0),
    month,
    day: dayOfYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1,
  };
}

/**
 * Days from 1970-01-01 to a date. One that the month does not have runs over into the next: 29 February of a common
 * year is 1 March.
 * @see civilDate
 * @example 1 January 2000 is 10 957
 */
export function dayNumber({ year, month, day }: CivilDate): number {
  return Date.UTC(year, month, day) / 86_400_000;
}
