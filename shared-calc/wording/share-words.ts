/** 'half the days', 'nine days in ten', '95 % of days'. */
export function shareWords(share: number): string {
  if (share === 0.5) return 'half the days';
  if (share === 0.75) return 'three days in four';
  if (share === 0.9) return 'nine days in ten';
  return `${String(Math.round(share * 100))}\u00a0% of days`;
}

/** What the files of a record are; 'mixed' where they are not all alike. Only observations can be counted as days. */
export type RecordNature = 'observed' | 'typical year' | 'averages' | 'model' | 'mixed';

const OF_DAYS: Readonly<Record<Exclude<RecordNature, 'observed'>, string>> = {
  'typical year': 'of a typical year',
  averages: 'of averages',
  model: 'of a model',
  mixed: 'of a record not all observed',
};

/**
 * Which share of a record's days a figure holds for: 'nine days in ten' of observations; of anything else the share of
 * what it is, since it says nothing on how many days there will be.
 * @example '90 % of a typical year'
 */
export function shareOfDaysWords(share: number, nature: RecordNature): string {
  return nature === 'observed'
    ? shareWords(share)
    : `${String(Math.round(share * 100))}\u00a0% ${OF_DAYS[nature]}`;
}
