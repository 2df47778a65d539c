import { L_PER_IMP_GAL, L_PER_US_GAL } from '../../units/constants.ts';
import type { GaugeScale } from '../gauge-scale.ts';

/** The columns of a run's file in the order in which they are written; a unit is the end of a name. */
export const RUN_COLUMNS = [
  'run',
  'direction',
  'start',
  'start_usable_L',
  'start_sd_L',
  'container',
  'ends_at',
  'time_utc',
  'volume_L',
  'READING',
  'stick_mm',
  'set_aside_because',
  'written_volume_L',
  'WRITTEN_READING',
] as const;

/** What volumes may be in, by the end of the column's name. */
export const VOLUME_UNITS: Readonly<Record<string, number>> = {
  L: 1,
  US_gal: L_PER_US_GAL,
  imp_gal: L_PER_IMP_GAL,
};

/** What readings are in, as the end of their column's name: 'eighths', 'US_gal', 'percent', 'bars', 'printed'. */
export function readingUnit(scale: GaugeScale): string {
  switch (scale.kind) {
    case 'fractions':
      return 'fraction';
    case 'volume':
      return scale.unit.replace(' ', '_');
    case 'bars':
      return 'bars';
    case 'percent':
      return 'percent';
    case 'numbers':
      return 'printed';
  }
}

export const STARTS = { engineFeed: 'engine feed', sump: 'sump', known: 'known' } as const;
export const ENDS = { brim: 'brim', gaugeStopped: 'gauge stopped' } as const;
