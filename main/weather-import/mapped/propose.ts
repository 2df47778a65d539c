import type { Mapping, Quantity } from './mapping.ts';
import { proposeTime, warmestHour } from './propose-time.ts';
import { median, unitOf, unitText } from './propose-unit.ts';
import type { Reason } from './reason.ts';
import type { TableHead } from './table-head.ts';

export interface Proposal {
  /** null where neither time nor temperature could be found. */
  mapping: Mapping | null;
  reasons: Reason[];
  /** Mean warmest hour by the printed clock, a check on the zone: 14 to 16 local solar time is usual. */
  warmestPrintedHour: number | null;
}

interface Rule {
  quantity: Quantity;
  name: RegExp;
  sure: boolean;
}

// Names in the order of trust: what says more about itself comes first. Names are in lower case.
const rules: readonly Rule[] = [
  { quantity: 'dew point', name: /dew|^dwp|^td$/, sure: true },
  {
    quantity: 'temperature',
    name: /^(temperature|temp|t|ta|tmp[cf]?|t2m|temp[cf])\b|^temperature|dry.?bulb|^air.?temp/,
    sure: true,
  },
  { quantity: 'humidity', name: /humid|^rh\b|^relh/, sure: true },
  { quantity: 'station pressure', name: /surface.?press|station.?press|stn.?press|^sp$|^qfe/, sure: true },
  { quantity: 'altimeter setting', name: /alti|^qnh/, sure: true },
  { quantity: 'sea-level pressure', name: /sea.?level|msl|^slp|^qff/, sure: true },
  { quantity: 'gust', name: /gust/, sure: true },
  { quantity: 'wind direction', name: /wind.?(from.?)?dir|^drct|^wdir|^dir$/, sure: true },
  { quantity: 'wind speed', name: /wind.?speed|^wspd|^wind$|^sknt|^ff$/, sure: true },
];
const notMeant = /apparent|feels|wet.?bulb|soil|gust.?dir|_max|_min|80m|120m|180m|hpa$/;

/** Propose how a table is to be read, from its header, the units in it and the values of its first rows. */
export function propose(table: TableHead, fileName: string): Proposal {
  const reasons: Reason[] = [];
  const columns = table.names.map((name, at) => ({
    name,
    lower: name.toLowerCase(),
    values: table.rows.map((row) => Number.parseFloat(row[at] ?? '')).filter((value) => value > -900),
    texts: table.rows.map((row) => row[at] ?? ''),
  }));
  type Column = (typeof columns)[number];

  const values: Mapping['values'] = [];
  const take = (quantity: Quantity, column: Column, why: string, sure: boolean) => {
    const unit = unitOf(quantity, column.lower, column.values, isFahrenheit, isModelExport);
    values.push({ quantity, column: column.name, unit: unit.unit });
    reasons.push({
      about: quantity,
      why: `column '${column.name}', ${why}; in ${unit.unit}, ${unit.why}`,
      sure: sure && unit.sure,
    });
  };
  const temperatures = columns.filter(({ lower }) => /temp|tmp|dew|dwp/.test(lower) && !notMeant.test(lower));
  const isFahrenheit =
    temperatures.some(({ lower }) => /f\b|°f|fahr/.test(unitText(lower))) || hottest(temperatures) > 50;
  const isModelExport = columns.some(({ lower }) => /_2m\b|_10m\b/.test(lower));
  for (const { quantity, name, sure } of rules) {
    const column = columns.find(
      ({ lower }) =>
        name.test(lower) &&
        !(notMeant.test(lower) && quantity !== 'gust') &&
        !values.some((value) => value.column.toLowerCase() === lower),
    );
    if (column !== undefined) take(quantity, column, 'by its name', sure);
  }
  const anyPressure = columns.find(
    ({ lower }) =>
      /^(pressure|press|pres|baro)/.test(lower) &&
      !values.some((value) => value.column.toLowerCase() === lower),
  );
  if (anyPressure !== undefined && !values.some(({ quantity }) => quantity.includes('pressure'))) {
    const low = median(anyPressure.values) < 930 && median(anyPressure.values) > 400;
    take(
      low ? 'station pressure' : 'sea-level pressure',
      anyPressure,
      low
        ? 'by its size, which is too low for sea level'
        : 'whose name does not tell at which height it stands',
      low,
    );
  }

  const time = proposeTime(table, reasons);
  const nature: Mapping['nature'] = isModelExport
    ? 'model'
    : /normal|average|mean/i.test(fileName)
      ? 'averages'
      : 'observed';
  if (nature !== 'observed')
    reasons.push({
      about: 'kind of record',
      why:
        nature === 'model'
          ? 'heights in the names (2 m, 10 m) are those of a model'
          : `the file is called '${fileName}'`,
      sure: false,
    });
  if (time === null || !values.some(({ quantity }) => quantity === 'temperature'))
    return {
      mapping: null,
      reasons: [
        ...reasons,
        ...(time === null
          ? [{ about: 'time', why: 'no column with date and time was found', sure: false }]
          : []),
      ],
      warmestPrintedHour: null,
    };

  const station = columns.find(({ lower }) =>
    /^(station|origin|icao|site|stid|id)(_?id|_?code)?$/.test(lower),
  );
  if (station !== undefined)
    reasons.push({ about: 'station', why: `column '${station.name}', by its name`, sure: true });
  return {
    mapping: {
      delimiter: table.delimiter,
      linesBefore: table.linesBefore,
      time: time.time,
      zone: { kind: 'offset', minutes: 0 },
      station: station?.name ?? null,
      values,
      nature,
    },
    reasons,
    warmestPrintedHour: warmestHour(
      table,
      time.read,
      values.find(({ quantity }) => quantity === 'temperature')?.column ?? '',
    ),
  };
}

function hottest(columns: readonly { values: readonly number[] }[]): number {
  return Math.max(
    -Infinity,
    ...columns.map(({ values }) =>
      median(values) > 200 ? -Infinity : values.reduce((most, value) => Math.max(most, value), -Infinity),
    ),
  );
}
