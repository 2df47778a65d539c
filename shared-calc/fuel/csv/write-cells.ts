import type { GaugeReading } from '../fill-run.ts';
import { printedSpan, readingText, type GaugeScale } from '../gauge-scale.ts';
import { parseReading } from '../parse-reading.ts';

// How figures and words stand in a CSV of ours (RFC 4180).

/** As the gauge prints it where that says all; else with every digit, so that it comes back as it was. */
export function exactReadingText(reading: GaugeReading, scale: GaugeScale): string {
  const short = readingText(reading, scale).replaceAll('\u00a0', ' ');
  if (reading.at !== 'scale') return reading.at === 'emptyStop' ? 'E' : 'F';
  const parsed = parseReading(short, scale);
  const { positionRatio } = reading;
  if (parsed.ok && parsed.reading.at === 'scale' && parsed.reading.positionRatio === positionRatio)
    return short;
  const { start, end } = printedSpan(scale);
  return decimal(start + positionRatio * (end - start), 15);
}

/** Without an exponent, which spreadsheets and people read differently; a nanolitre is close enough. */
export function decimal(value: number, places = 9): string {
  return value.toFixed(places).replace(/\.?0+$/, '');
}

/** Rows of cells as the text of a file. */
export function csvText(rows: readonly (readonly string[])[]): string {
  return rows.map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');
}

function quoted(cell: string): string {
  return /[",\r\n;\t]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
