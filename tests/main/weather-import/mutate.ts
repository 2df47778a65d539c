import { missing, type MonthBlock } from '../../../main/store/observation-columns.ts';
import { FileProblem } from '../../../main/weather-import/file-problem.ts';
import { scanFile, type ScanSummary } from '../../../main/weather-import/scan.ts';
import { everySample } from './every-sample.ts';
import { fileWith } from './samples.ts';

/** Numbers from 0 to below 1, the same for the same seed (xorshift). */
export function seeded(seed: number): () => number {
  let state = seed | 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}

const inserts = [
  '\n',
  '\r\n',
  ',',
  '|',
  '"',
  '\0',
  '99999',
  '-',
  '+',
  '.',
  '\u00ff',
  'M',
  'REM',
  'MA1',
  '1e9',
  '2016-02-30',
  '\n\n\n',
  ',,,,,,',
];

const dates = ['2016-02-29', '2015-02-29', '20150229', '02/29/2015', '2016 02 29', '2015-04-31'];
const hours = ['24:00', '25:00', 'T24:00', ' 24', '2360', '02:60'];

/** A whole file spoilt as files are on their way: by an editor, a mail, a script that joined or sorted it. */
function mistreated(text: string, random: () => number): Buffer {
  const lines = text.split('\n');
  const pick = (from: readonly string[]) => from[Math.floor(random() * from.length)] ?? '';
  const somewhere = () => 1 + Math.floor(random() * lines.length);
  switch (Math.floor(random() * 9)) {
    case 0:
      return Buffer.from(lines.join('\r\n'), 'latin1');
    case 1:
      return Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from(text, 'latin1')]);
    case 2:
      return Buffer.from(`\uFEFF${text}`, random() < 0.5 ? 'utf16le' : 'utf8');
    case 3:
      return Buffer.from(
        lines.toSpliced(somewhere(), 0, ...lines.slice(0, 1 + Math.floor(random() * 8))).join('\n'),
      );
    case 4:
      return Buffer.from([...lines.slice(0, 8), ...lines.slice(8).toReversed()].join('\n'), 'latin1');
    case 5:
      return Buffer.from(text.slice(0, Math.floor(random() * text.length)), 'latin1');
    case 6: {
      const other = everySample[Math.floor(random() * everySample.length)]?.text.split('\n') ?? [];
      return Buffer.from(lines.toSpliced(somewhere(), 0, ...other.slice(0, 40)).join('\n'), 'latin1');
    }
    case 7: {
      // The date or hour of one row becomes one that is rare or that there is not.
      const at = somewhere();
      const line = (lines[at] ?? '').replace(
        /\d{4}-?\d\d-?\d\d|\d\d\/\d\d\/\d{4}|\d{4} \d\d \d\d/,
        pick(dates),
      );
      return Buffer.from(lines.with(Math.min(at, lines.length - 1), line).join('\n'), 'latin1');
    }
    default: {
      const at = Math.min(somewhere(), lines.length - 1);
      const line = (lines[at] ?? '').replace(/[T ]?\d\d:\d\d/, pick(hours));
      return Buffer.from(lines.with(at, line).join('\n'), 'latin1');
    }
  }
}

/** A sample spoilt in a few places, or as a whole. */
export function mutated(text: string, random: () => number): Buffer {
  let bytes = random() < 0.3 ? mistreated(text, random) : Buffer.from(text, 'latin1');
  if (random() < 0.2) return bytes;
  const place = () => Math.floor(random() * bytes.length);
  const most = 1 + Math.floor(random() * 6);
  for (let i = 0; i < most && bytes.length > 0; i++) {
    const at = place();
    const other = place();
    const [from, to] = at < other ? [at, other] : [other, at];
    const piece = () => Buffer.from(inserts[Math.floor(random() * inserts.length)] ?? '', 'latin1');
    switch (Math.floor(random() * 8)) {
      case 0:
        bytes.writeUInt8(Math.floor(random() * 256), at);
        break;
      case 1:
        bytes = Buffer.concat([bytes.subarray(0, at), piece(), bytes.subarray(at)]);
        break;
      case 2:
        bytes = Buffer.concat([bytes.subarray(0, from), bytes.subarray(Math.min(to, from + 200))]);
        break;
      case 3:
        bytes = Buffer.concat([
          bytes.subarray(0, to),
          bytes.subarray(from, Math.min(to, from + 2000)),
          bytes.subarray(to),
        ]);
        break;
      case 4:
        bytes = Buffer.from(bytes.subarray(0, at));
        break;
      case 5:
        // A digit elsewhere: dates, figures, lengths.
        for (let j = at; j < bytes.length; j++)
          if ((bytes[j] ?? 0) >= 48 && (bytes[j] ?? 0) <= 57) {
            bytes.writeUInt8(48 + Math.floor(random() * 10), j);
            break;
          }
        break;
      case 6:
        bytes = Buffer.from(
          bytes
            .toString('latin1')
            .replaceAll(random() < 0.5 ? ',' : '\n', () => (random() < 0.9 ? '\n' : ',')),
          'latin1',
        );
        break;
      default:
        bytes = Buffer.concat([
          bytes.subarray(0, at),
          Buffer.alloc(Math.floor(random() * 300), piece()),
          bytes.subarray(at),
        ]);
    }
  }
  return bytes;
}

export interface FuzzResult {
  readCount: number;
  refusedCount: number;
  slowestMs: number;
  /** What should never be: files that crashed the reading or gave what cannot be. */
  wrong: string[];
}

/** Read that many spoilt files, of all kinds in turn. Each either gives only what can be, or is refused with a sentence. */
export async function fuzz(count: number, seed: number): Promise<FuzzResult> {
  const random = seeded(seed);
  const result: FuzzResult = { readCount: 0, refusedCount: 0, slowestMs: 0, wrong: [] };
  for (let i = 0; i < count; i++) {
    const each = everySample[i % everySample.length];
    if (each === undefined) break;
    const bytes = mutated(each.text, random);
    const path = fileWith(bytes, 'spoilt.txt', 'fuzz');
    const begun = performance.now();
    const blocks: MonthBlock[] = [];
    try {
      const summary = await scanFile(
        { path },
        {
          ...(each.mapping === undefined ? {} : { mapping: each.mapping }),
          standardOffsetMinutes: -300,
          reportMonth: { year: 2013, month: 1 },
          onBlocks: (some) => {
            blocks.push(...some);
          },
        },
      );
      result.readCount++;
      const cannotBe = impossible(summary, blocks);
      if (cannotBe !== null) result.wrong.push(`file ${String(i)} of ${each.name}: ${cannotBe}`);
    } catch (error) {
      if (error instanceof FileProblem && /^[A-Z].*\.$/s.test(error.message)) result.refusedCount++;
      else result.wrong.push(`file ${String(i)} of ${each.name}: ${String(error)}`);
    }
    result.slowestMs = Math.max(result.slowestMs, performance.now() - begun);
  }
  return result;
}

function impossible(summary: ScanSummary, blocks: readonly MonthBlock[]): string | null {
  const stored = blocks.reduce((sum, { observationCount }) => sum + observationCount, 0);
  if (stored !== summary.observationCount)
    return `${String(stored)} stored of ${String(summary.observationCount)}`;
  if (summary.usableCount > stored || summary.usableCount < 0) return 'more usable rows than rows';
  if (summary.observationCount > summary.lineCount) return 'more rows than lines';
  for (const { reason, count, examples } of summary.skipped)
    if (
      count < 1 ||
      examples.length === 0 ||
      examples.some(({ line }) => line < 1 || line > summary.lineCount)
    )
      return `no line for '${reason}'`;
  for (const { minuteOfMonth, columns, observationCount } of blocks) {
    let last = -1;
    for (let i = 0; i < observationCount; i++) {
      const minute = minuteOfMonth[i] ?? -1;
      if (minute < last || minute >= 31 * 1440) return `minute ${String(minute)} after ${String(last)}`;
      last = minute;
      const temperature = columns.temperatureC100?.[i] ?? missing;
      if (temperature !== missing && (temperature < -9000 || temperature > 6000))
        return `temperature ${String(temperature)}`;
      const direction = columns.windFromDeg?.[i] ?? missing;
      if (direction !== missing && (direction < -1 || direction > 360))
        return `direction ${String(direction)}`;
      const pressure = columns.altimeterSettingHpa100?.[i] ?? missing;
      if (pressure !== missing && (pressure < -15_000 || pressure > 10_000))
        return `setting ${String(pressure)}`;
    }
  }
  return null;
}
