import type { Mapping } from './mapping.ts';
import type { Reason } from './reason.ts';
import { readParts, readStamp, type PrintedTime, type StampOrder } from './stamp.ts';
import type { TableHead } from './table-head.ts';

/** How a table's time is to be read, and how to read it from a row. */
export interface FoundTime {
  time: Mapping['time'];
  read: (row: string[]) => PrintedTime | null;
}

/** A stamp with its own zone, else a stamp, else columns of their own; null where none is found. */
export function proposeTime(table: TableHead, reasons: Reason[]): FoundTime | null {
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

/** Mean warmest hour by the printed clock; null where an hour has fewer than three rows. */
export function warmestHour(
  table: TableHead,
  read: FoundTime['read'],
  temperatureName: string,
): number | null {
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
