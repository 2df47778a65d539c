/** What an export says about each table or view: a sentence, or why it is left out. */
export type Described = { about: string } | { leftOut: string };

/** By the table's name. One that this program does not know (a newer library's) is written all the same. */
export const describedTables: Record<string, Described> = {
  setting: { about: 'What was set differently from its default, each value as JSON.' },
  notice: { about: 'What was told about the library as a whole: migrations, restored backups.' },
  change_record: { leftOut: 'the list that undo and redo walk has no data of its own' },
};

/** How the end of a column's name is read. */
export const columnEndings: readonly (readonly [ending: string, meaning: string])[] = [
  ['_id', 'names a row of the table before it (aircraft_id: a row of aircraft.csv)'],
  ['_kg', 'kilograms'],
  ['_m', 'metres; an arm is metres aft of the datum'],
  ['_kg_m', 'kilogram-metres, a moment'],
  ['_l', 'litres'],
  ['_l_per_h', 'litres an hour'],
  ['_kg_per_l', 'kilograms a litre, a density'],
  ['_ms', 'metres a second'],
  ['_hpa', 'hectopascals'],
  ['_c', 'degrees Celsius'],
  ['_k', 'kelvins, a difference of temperatures'],
  ['_deg', 'degrees'],
  ['_percent', 'percent'],
  ['_ratio', 'a ratio, without a unit'],
  ['_min', 'minutes'],
  ['_s', 'seconds'],
  ['_v', 'volts'],
  ['_count', 'how many'],
  ['_epoch_s', 'a time: seconds since 1970-01-01 00:00 UTC'],
  ['_on', 'a date, year-month-day'],
  ['_json', 'JSON'],
  ['_sd_..., sd_...', 'a standard uncertainty, in the unit that the name ends in'],
  ['position', 'the order of rows that belong together, from 0'],
  ['removed, withdrawn, dismissed', '1 where it was, and is kept for what refers to it and for undo; else 0'],
];
