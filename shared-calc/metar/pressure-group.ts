import { HPA_PER_INHG } from '../units/constants.ts';

/** Outside these a group is a slip of the key, not weather: 25.00 to 32.00 inHg, 850 to 1,085 hPa. */
const LEAST_INHG100 = 2500;
const MOST_INHG100 = 3200;
const LEAST_HPA = 850;
const MOST_HPA = 1085;

export type AltimeterGroup = {
  /** in the unit of the group, as printed */
  printed: number;
  unit: 'inHg' | 'hPa';
  /** null for "A////" and "Q////" */
  settingHpa: number | null;
  /**
   * Reports round down: the true setting is from settingHpa to less than this above it, 1 hPa or 0.01 inHg. A setting that
   * is low by so much makes density altitude high by up to 27 ft, the safe side.
   */
  truncatedByHpa: number;
};

/**
 * Altimeter setting: "A2992" in inches of mercury, "Q1013" in hectopascals, "QNH2992INS".
 * @source FMH-1 12.6.11; WMO-No. 306 FM 15, 15.12 ("rounded down to the nearest whole hectopascal")
 */
export function readAltimeter(text: string): AltimeterGroup | undefined {
  const inches = /^(?:A(\d{4}|\/{4})|QNH(\d{4})INS)$/.exec(text);
  if (inches !== null) return altimeter(inches[1] ?? inches[2] ?? '', 'inHg');
  const hectopascals = /^Q(\d{4}|\/{4})$/.exec(text);
  return hectopascals === null ? undefined : altimeter(hectopascals[1] ?? '', 'hPa');
}

function altimeter(digits: string, unit: 'inHg' | 'hPa'): AltimeterGroup | undefined {
  const truncatedByHpa = unit === 'inHg' ? HPA_PER_INHG / 100 : 1;
  if (!/^\d/.test(digits)) return { printed: NaN, unit, settingHpa: null, truncatedByHpa };
  const value = Number(digits);
  const [least, most] = unit === 'inHg' ? [LEAST_INHG100, MOST_INHG100] : [LEAST_HPA, MOST_HPA];
  if (value < least || value > most) return undefined;
  const printed = unit === 'inHg' ? value / 100 : value;
  return { printed, unit, settingHpa: unit === 'inHg' ? printed * HPA_PER_INHG : printed, truncatedByHpa };
}

/**
 * Sea-level pressure of the remarks, "SLP982", whose hundreds are left out: of the two pressures that it can mean the one
 * nearer to the altimeter setting, or without one the one nearer to 1,000 hPa.
 * @param settingHpa altimeter setting of the same report, if there is one
 * @returns hPa; null for "SLPNO"
 * @source FMH-1 12.7.1 v
 */
export function readSeaLevelPressure(text: string, settingHpa: number | null): number | null | undefined {
  if (text === 'SLPNO') return null;
  const parts = /^SLP(\d{3})$/.exec(text);
  if (parts === null) return undefined;
  const low = 900 + Number(parts[1]) / 10;
  const high = low + 100;
  const about = settingHpa ?? 1000;
  return Math.abs(high - about) < Math.abs(low - about) ? high : low;
}
