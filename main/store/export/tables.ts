/** What an export says about each table or view: a sentence, or why it is left out. */
export type Described = { about: string } | { leftOut: string };

/** By the table's name. One that this program does not know (a newer library's) is written all the same. */
export const describedTables: Record<string, Described> = {
  setting: { about: 'What was set differently from its default, each value as JSON.' },
  notice: { about: 'What was told about the library as a whole: migrations, restored backups.' },

  aircraft: { about: 'Aeroplanes: reference lines, maximum masses, glide, fuel flow and reserves.' },
  station: { about: 'Places where something is loaded, with arms and limits.' },
  station_group: { about: 'Stations that have a limit together.' },
  station_group_member: { about: 'Which stations belong to which group.' },
  tank: { about: 'Fuel tanks; capacity_l is all that a tank holds, the unusable fuel included.' },
  tank_knot: { about: 'Tables of a tank: arm or moment over contents, as the manual prints them.' },
  envelope: {
    about: 'Limits of mass and centre of gravity, in the coordinate in which the manual prints them.',
  },
  envelope_vertex: { about: 'The corners of each envelope, in order.' },
  weighing: { about: 'Empty masses and centres of gravity; a later one supersedes, none is overwritten.' },
  weighing_scale: { about: 'The scales of a weighing as they were read.' },

  performance: {
    about:
      'What each manual prints its performance in, wind limits, and the one take-off figure of a manual without a table.',
  },
  performance_table: {
    about:
      'Tables for take-off, landing and climb: what they hold for, the safety factor, the spread of a reading.',
  },
  performance_row: {
    about:
      'Printed rows of these tables; empty is a place on an axis that the table does not have, or a figure left blank.',
  },
  performance_note: {
    about: 'Notes below these tables: by which share how much of what changes a distance.',
  },

  person: { about: 'People and things that fly along: mass, how it is known, spread and bias.' },
  loading: { about: 'Saved loadings: the flight and the order in which the tanks are used.' },
  loading_item: { about: 'Who or what lies at which station in a loading.' },
  loading_fuel: {
    about:
      'Usable fuel in each tank at the start of a loading: lowest, best and highest figure; what the gauge read and its curve, where it was read.',
  },
  loading_sheet: {
    about:
      'Loading sheets that were printed, by the serial on the paper, with all that each was made from (JSON).',
  },
  loading_burn: { about: 'The order of the tanks in a loading.' },
  review_table: {
    about:
      'Scenarios side by side, one table an aeroplane: its rows (who and what lies where), its columns (fuel), and what all share.',
  },
  seen_verdict: {
    about:
      'How loadings and scenarios stood when somebody looked at them last (JSON), so that a change since can be told.',
  },

  container: { about: 'What fuel was measured with: nominal volume, error of its scale and of each pour.' },
  fill_test: {
    about: 'Fill tests of a tank: day, attitude, supply, fuel and the scale printed on the gauge.',
  },
  fill_run: { about: 'Runs of a fill test: filling or draining, and what was in the tank at the start.' },
  pour: { about: 'Pours and drains in order, each with the gauge read after it; set aside with a reason.' },
  gauge_pin: {
    about: 'Readings at which the contents are known from elsewhere, pinned in a fill test by hand.',
  },
  calibration: { about: 'Adopted curves of a gauge; a later one supersedes, a wrong one is withdrawn.' },
  calibration_knot: {
    about: 'Usable fuel over position of the needle, 0 at the empty stop and 1 at the full one.',
  },
  calibration_band: {
    about:
      'Adopted curves with a band: usable fuel at 5, 50 and 95 %, with the needle on its mark and as read to the nearest division.',
  },
  fuel_card: {
    about: 'Fuel cards that were printed, by the serial on the paper, and the curve behind each.',
  },
  calibration_refit: {
    about:
      'The curves behind an adopted band, at its positions in their order, with the errors of the containers.',
  },
  calibration_check: { about: 'Which checks an adopted curve took in as data.' },
  calibration_test: { about: 'Which fill tests an adopted curve rests on.' },

  fuel_check: {
    about:
      'Checks of a gauge: readings before and after a flight with the fuel bought, or the reading with no usable fuel left.',
  },
  dipstick: { about: 'Dipsticks and sight tubes of the tanks: length, and to what they are read.' },

  field: { about: 'Airfields: place, elevation, time zone and the weather station that stands for them.' },
  runway: { about: 'Runways with both of their directions; headings are true.' },
  weather_station: { about: 'Weather stations with their place, and where it is known from.' },
  weather_import: { about: 'Weather files that were imported, and what was left out of them and why.' },
  weather_mapping: {
    about:
      'How tables of weather of one shape are to be read, as a person confirmed it; shapes are told by their header.',
  },
  observation: {
    about: 'Every weather report of the imports; where imports overlap, one moment can appear twice.',
  },
  observation_block: { leftOut: 'the packed form of observation' },

  change_record: { leftOut: 'the list that undo and redo walk has no data of its own' },
};

/** How the end of a column's name is read. */
export const columnEndings: readonly (readonly [ending: string, meaning: string])[] = [
  ['_id', 'names a row of the table before it (aircraft_id: a row of aircraft.csv)'],
  ['_kg', 'kilograms'],
  ['_mm', 'millimetres'],
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
  ['_amount', 'per how much a note counts: m/s of wind, degrees Celsius, or a slope as a ratio'],
  ['_count', 'how many'],
  ['_printed', 'a figure as the gauge prints it; in scale_unit where there is one'],
  ['_epoch_s', 'a time: seconds since 1970-01-01 00:00 UTC (in a spreadsheet: =A2/86400+DATE(1970,1,1))'],
  ['_on', 'a date, year-month-day'],
  ['_json', 'JSON'],
  ['_sd_..., sd_...', 'a standard uncertainty, in the unit that the name ends in'],
  ['position', 'the order of rows that belong together, from 0'],
  ['removed, withdrawn, dismissed', '1 where it was, and is kept for what refers to it and for undo; else 0'],
];
