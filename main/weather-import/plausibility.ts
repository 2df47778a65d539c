import { flag, missing, type ColumnName } from '../store/observation-columns.ts';
import type { ProblemList } from './problems.ts';

// Checks of a value against the reports around it. Limits are common practice, no source: a front or a thunderstorm
// moves temperature by 10 degC in minutes, but it does not come back with the next report.

/** A report further away than this says nothing about its neighbour. */
const neighbourMinutes = 120;
/** By so much a value has to stand out against both neighbours, in the same direction ... */
const spikes: Partial<Record<ColumnName, number>> = {
  temperatureC100: 800,
  dewPointC100: 1200,
  altimeterSettingHpa100: 600,
  seaLevelPressureHpa100: 800,
  stationPressureHpa100: 600,
};
/** ... which differ among themselves by no more than this share of it. */
const neighboursAgreeShare = 0.5;
/** Unmoved for so long, over so many reports, a value is stuck. Saturated winter air stands still for half a day. */
const stuckMinutes = 24 * 60;
const stuckReports = 18;

interface Month {
  count: number;
  minute: Uint16Array;
  line: Uint32Array;
  columns: Record<ColumnName, Int16Array>;
}

const spikeColumns = Object.keys(spikes) as ColumnName[];
const stuckTogether: readonly ColumnName[][] = [
  ['temperatureC100', 'dewPointC100'],
  ['altimeterSettingHpa100'],
  ['stationPressureHpa100'],
];

/**
 * Flag spikes and stuck values of a month's reports and count them. Nothing is left out.
 * A run that goes on over the month's end is judged in each month by itself.
 * @param order places in order of time, or null where they are
 * @param noticedAtLine where the reading of the file is
 */
export function flagImplausible(
  month: Month,
  order: Uint32Array | null,
  problems: ProblemList,
  noticedAtLine: number,
): void {
  for (const name of spikeColumns) flagSpikes(month, order, name, problems, noticedAtLine);
  for (const names of stuckTogether) flagStuck(month, order, names, problems, noticedAtLine);
}

function flagSpikes(
  month: Month,
  order: Uint32Array | null,
  name: ColumnName,
  problems: ProblemList,
  noticedAtLine: number,
): void {
  const { minute, columns } = month;
  const column = columns[name];
  const least = spikes[name] ?? Infinity;
  // The last two places at which there was a value, and the values.
  let before = -1;
  let middle = -1;
  let last = 0;
  let judged = 0;
  for (let i = 0; i < month.count; i++) {
    const at = order === null ? i : (order[i] ?? 0);
    const value = column[at] ?? missing;
    if (value === missing) continue;
    const up = judged - last;
    const down = judged - value;
    // Most values fail the first comparison: the step back is the rarest.
    if (Math.abs(down) >= least && before >= 0 && up * down > 0 && Math.abs(up) >= least) judge(at, value);
    before = middle;
    middle = at;
    last = judged;
    judged = value;
  }

  function judge(at: number, value: number): void {
    if (
      Math.abs(value - last) > least * neighboursAgreeShare ||
      (minute[middle] ?? 0) - (minute[before] ?? 0) > neighbourMinutes ||
      (minute[at] ?? 0) - (minute[middle] ?? 0) > neighbourMinutes
    )
      return;
    columns.flags[middle] = (columns.flags[middle] ?? 0) | flag.spike;
    problems.add(
      'a value that stands alone against the reports around it (spike): kept, marked',
      month.line[middle] ?? 0,
      () => `${inWords[name] ?? name}: ${plain(last)}, then ${plain(judged)}, then ${plain(value)}`,
      noticedAtLine,
    );
  }

  function plain(stored: number): string {
    return ((stored + (offsets[name] ?? 0)) / 100).toFixed(1);
  }
}

function flagStuck(
  month: Month,
  order: Uint32Array | null,
  names: readonly ColumnName[],
  problems: ProblemList,
  noticedAtLine: number,
): void {
  const { minute, columns, count } = month;
  const [first = 'flags', second = first] = names;
  const a = columns[first];
  const b = columns[second];
  // The run so far: its first place in order, its values, where it ended and how many reports it has.
  let from = 0;
  let valueA = missing;
  let valueB = missing;
  let last = 0;
  let reports = 0;
  for (let i = 0; i < count; i++) {
    const at = order === null ? i : (order[i] ?? 0);
    const nextA = a[at] ?? missing;
    const nextB = b[at] ?? missing;
    if (nextA === missing || nextB === missing) continue;
    if (nextA === valueA && nextB === valueB) {
      last = i;
      reports++;
      continue;
    }
    if (reports >= stuckReports) judge();
    from = i;
    last = i;
    valueA = nextA;
    valueB = nextB;
    reports = 1;
  }
  if (reports >= stuckReports) judge();

  function placeOf(i: number): number {
    return order === null ? i : (order[i] ?? 0);
  }

  function judge(): void {
    if ((minute[placeOf(last)] ?? 0) - (minute[placeOf(from)] ?? 0) < stuckMinutes) return;
    for (let i = from; i <= last; i++) {
      const place = placeOf(i);
      if (a[place] !== valueA || b[place] !== valueB) continue;
      columns.flags[place] = (columns.flags[place] ?? 0) | flag.stuck;
      problems.add(
        'a value that did not move for a day or longer (stuck): kept, marked',
        month.line[place] ?? 0,
        () => `${names.map((name) => inWords[name] ?? name).join(' and ')}, ${String(reports)} reports`,
        noticedAtLine,
      );
    }
  }
}

const inWords: Partial<Record<ColumnName, string>> = {
  temperatureC100: 'temperature',
  dewPointC100: 'dew point',
  altimeterSettingHpa100: 'altimeter setting',
  seaLevelPressureHpa100: 'sea-level pressure',
  stationPressureHpa100: 'station pressure',
};

const offsets: Partial<Record<ColumnName, number>> = {
  altimeterSettingHpa100: 100_000,
  seaLevelPressureHpa100: 100_000,
  stationPressureHpa100: 80_000,
};
