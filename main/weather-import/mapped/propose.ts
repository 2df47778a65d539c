import type { Mapping, Quantity } from './mapping.ts';
import { readParts, readStamp, type PrintedTime, type StampOrder } from './stamp.ts';
import type { TableHead } from './table-head.ts';

/** One thing that was proposed, and from what. What is not sure has to be looked at by the person. */
export interface Reason {
  about: string;
  why: string;
  sure: boolean;
}

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

interface FoundTime {
  time: Mapping['time'];
  read: (row: string[]) => PrintedTime | null;
}

/** A stamp with its own zone, else a stamp, else columns of their own. */
function proposeTime(table: TableHead, reasons: Reason[]): FoundTime | null {
  const found: (FoundTime & { ownZone: boolean; name: string; order: StampOrder; ambiguous: boolean })[] = [];
  table.names.forEach((name, at) => {
    const texts = table.rows.map((row) => row[at] ?? '');
    const orders = (['year first', 'month first', 'day first'] as const).filter(
      (order) =>
        texts.length > 0 &&
        texts.filter((text) => readStamp(text, order) !== null).length >= texts.length * 0.9,
    );
    const [order] = orders;
    if (order === undefined) return;
    found.push({
      time: { kind: 'stamp', column: name, order },
      read: (row) => readStamp(row[at] ?? '', order),
      ownZone: readStamp(texts[0] ?? '', order)?.offsetMinutes !== null || /utc|gmt|zulu/i.test(name),
      name,
      order,
      ambiguous: orders.length > 1,
    });
  });
  const best = found.find(({ ownZone }) => ownZone) ?? found[0];
  if (best !== undefined) {
    reasons.push({
      about: 'time',
      why: `column '${best.name}', ${best.order}, by its values${best.ambiguous ? '; day and month could be the other way round' : ''}`,
      sure: !best.ambiguous,
    });
    reasons.push(
      best.ownZone
        ? { about: 'zone', why: 'its times say themselves that they are UTC or how far from it', sure: true }
        : { about: 'zone', why: 'nothing in it tells; UTC is only a beginning', sure: false },
    );
    return best;
  }
  const at = (pattern: RegExp) => table.names.findIndex((name) => pattern.test(name.toLowerCase()));
  const [year, month, day, hour, minute] = [
    /^(year|yr|yyyy)$/,
    /^(month|mon|mm)$/,
    /^(day|dd)$/,
    /^(hour|hr|hh)$/,
    /^(minute|min|mi)$/,
  ].map(at) as [number, number, number, number, number];
  if (Math.min(year, month, day, hour) < 0) return null;
  const name = (place: number) => table.names[place] ?? '';
  reasons.push({ about: 'time', why: 'columns of their own for year, month, day and hour', sure: true });
  reasons.push({ about: 'zone', why: 'nothing in it tells; UTC is only a beginning', sure: false });
  return {
    time: {
      kind: 'parts',
      year: name(year),
      month: name(month),
      day: name(day),
      hour: name(hour),
      minute: minute < 0 ? null : name(minute),
    },
    read: (row) =>
      readParts(
        Number(row[year]),
        Number(row[month]),
        Number(row[day]),
        Number(row[hour]),
        minute < 0 ? 0 : Number(row[minute]),
      ),
  };
}

/** The unit text of a name: what stands in brackets or behind the last separator. */
function unitText(lower: string): string {
  return /[([]([^)\]]*)[)\]]\s*$/.exec(lower)?.[1] ?? lower;
}

function unitOf(
  quantity: Quantity,
  lower: string,
  values: readonly number[],
  isFahrenheit: boolean,
  isModelExport: boolean,
): { unit: string; why: string; sure: boolean } {
  const said =
    /[([]([^)\]]*)[)\]]\s*$/.exec(lower)?.[1]?.trim() ??
    /_(kt|kn|mph|kmh|ms|inhg|hpa|mb|pa|kpa|c|f|k)$/.exec(lower)?.[1];
  const byName =
    said === undefined ? undefined : namedUnits(quantity)[said.replace('°', '').replace(/^deg ?/, '')];
  if (byName !== undefined) return { unit: byName, why: 'as its name says', sure: true };
  const middle = median(values);
  switch (quantity) {
    case 'temperature':
    case 'dew point':
      if (middle > 200) return { unit: 'K', why: 'by its values', sure: true };
      if (isFahrenheit) return { unit: 'degF', why: 'by values too high for degC', sure: true };
      return { unit: 'degC', why: 'no value in it is too high for that', sure: Math.min(...values) < 0 };
    case 'humidity':
      return { unit: 'percent', why: 'by its name', sure: Math.max(...values) > 1 };
    case 'wind direction':
      return { unit: 'deg', why: 'by its name', sure: true };
    case 'wind speed':
    case 'gust':
      if (isModelExport)
        return { unit: 'km/h', why: 'as that export has it where nothing else is asked for', sure: false };
      return isFahrenheit
        ? { unit: 'mph', why: 'because temperatures are in degF', sure: false }
        : { unit: 'm/s', why: 'because temperatures are in degC', sure: false };
    default:
      if (middle > 20 && middle < 35) return { unit: 'inHg', why: 'by its values', sure: true };
      if (middle > 40_000) return { unit: 'Pa', why: 'by its values', sure: true };
      if (middle > 45 && middle < 115) return { unit: 'kPa', why: 'by its values', sure: true };
      return { unit: 'hPa', why: 'by its values', sure: middle > 800 };
  }
}

function namedUnits(quantity: Quantity): Partial<Record<string, string>> {
  if (quantity === 'temperature' || quantity === 'dew point')
    return { c: 'degC', celsius: 'degC', f: 'degF', fahrenheit: 'degF', k: 'K' };
  if (quantity === 'humidity') return { '%': 'percent', percent: 'percent' };
  if (quantity === 'wind direction') return { '': 'deg', deg: 'deg', degrees: 'deg' };
  if (quantity === 'wind speed' || quantity === 'gust')
    return {
      kt: 'kt',
      kn: 'kt',
      kts: 'kt',
      knots: 'kt',
      mph: 'mph',
      mp: 'mph',
      'mp/h': 'mph',
      kmh: 'km/h',
      'km/h': 'km/h',
      ms: 'm/s',
      'm/s': 'm/s',
    };
  return { hpa: 'hPa', mb: 'hPa', mbar: 'hPa', inhg: 'inHg', pa: 'Pa', kpa: 'kPa', mmhg: 'mmHg' };
}

function hottest(columns: readonly { values: readonly number[] }[]): number {
  return Math.max(
    -Infinity,
    ...columns.map(({ values }) =>
      median(values) > 200 ? -Infinity : values.reduce((most, value) => Math.max(most, value), -Infinity),
    ),
  );
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;
}

function warmestHour(table: TableHead, read: FoundTime['read'], temperatureName: string): number | null {
  const at = table.names.indexOf(temperatureName);
  const sums = Array.from({ length: 24 }, () => ({ sum: 0, count: 0 }));
  for (const row of table.rows) {
    const moment = read(row);
    const value = Number.parseFloat(row[at] ?? '');
    const hour = sums[Math.floor(((moment?.minute ?? NaN) % 1440) / 60)];
    if (hour === undefined || Number.isNaN(value)) continue;
    hour.sum += value;
    hour.count++;
  }
  if (sums.some(({ count }) => count < 3)) return null;
  return sums.reduce((best, { sum, count }, hour) => {
    const leader = sums[best] ?? { sum: 0, count: 1 };
    return sum / count > leader.sum / leader.count ? hour : best;
  }, 0);
}
