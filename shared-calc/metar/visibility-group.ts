import { M_PER_SM } from '../units/constants.ts';

export type Visibility = {
  metres: number;
  /** "P6SM" and 9999 are more than the figure (10 km or more), "M1/4SM" less. */
  bound: 'exact' | 'more' | 'less';
};

const BOUND = { P: 'more', M: 'less', '': 'exact' } as const;

/**
 * Visibility in statute miles: "10SM", "3/4SM", "P6SM", "M1/4SM"; whole and fraction as one text, "1 3/4SM".
 * @source FMH-1 12.6.6; Aeronautical Information Manual, key to METAR
 */
export function readMiles(text: string): Visibility | undefined {
  const parts = /^([PM]?)(?:(\d{1,2}) )?(\d{1,2})(?:\/(\d{1,2}))?SM$/.exec(text);
  if (parts === null) return undefined;
  const [, bound = '', whole, over = '', under] = parts;
  // A whole number before needs a fraction after: "1 3SM" is two groups, and "11/4SM" could be 1 1/4 or 11/4.
  if (whole !== undefined && under === undefined) return undefined;
  if (under !== undefined && (Number(under) === 0 || Number(over) >= Number(under))) return undefined;
  const miles = Number(whole ?? 0) + Number(over) / Number(under ?? 1);
  return { metres: miles * M_PER_SM, bound: BOUND[bound as keyof typeof BOUND] };
}

/** Visibility in metres: "0600", "7000", "9999" (10 km or more), "9999NDV". @source WMO-No. 306 FM 15, 15.6 */
export function readMetres(text: string): Visibility | undefined {
  const parts = /^(\d{4})(?:NDV)?$/.exec(text);
  if (parts === null) return undefined;
  return parts[1] === '9999'
    ? { metres: 10_000, bound: 'more' }
    : { metres: Number(parts[1]), bound: 'exact' };
}
