import { InputProblem, requireRange } from '../problem.ts';
import type { GaugeReading } from './fill-run.ts';

/**
 * The scale printed on the owner's gauge. A position is linear in what is printed; marks that stand unevenly
 * do no harm, because the fill test finds the volume at each of them.
 */
export type GaugeScale =
  /** E, 1/8, ... F: `denominator` divisions (2 to 100), read to the nearest one. */
  | { readonly kind: 'fractions'; readonly denominator: number }
  /** Litres or gallons as printed, from empty to full, read to the nearest `step`. */
  | {
      readonly kind: 'volume';
      readonly unit: VolumeOnGauge;
      readonly atEmpty: number;
      readonly atFull: number;
      readonly step: number;
    }
  /** Lit bars out of `count` (2 to 100): none lit is the empty stop, all lit the full one. */
  | { readonly kind: 'bars'; readonly count: number }
  | { readonly kind: 'percent'; readonly step: number }
  /** Printed numbers without a unit, or a sender's volts or ohms; may fall towards full. */
  | { readonly kind: 'numbers'; readonly atEmpty: number; readonly atFull: number; readonly step: number };

export type VolumeOnGauge = 'L' | 'US gal' | 'imp gal';

/** @throws RangeProblem naming the part of the scale that lies outside its range */
export function requireScale(scale: GaugeScale): void {
  if (scale.kind === 'fractions') requireWhole('denominator', scale.denominator);
  else if (scale.kind === 'bars') requireWhole('count', scale.count);
  else if (scale.kind === 'percent') requireRange('step', scale.step, 0.1, 50, '%');
  else {
    requireRange('atEmpty', scale.atEmpty, -10000, 10000, '');
    const atFullLeast = scale.kind === 'volume' ? scale.atEmpty + 0.1 : -10000;
    requireRange('atFull', scale.atFull, atFullLeast, 10000, scale.kind === 'volume' ? scale.unit : '');
    const span = Math.abs(scale.atFull - scale.atEmpty);
    // A scale whose ends print the same number has no length.
    requireRange('atFull - atEmpty', span, 1e-6, 20000, '');
    requireRange('step', scale.step, span / 1000, span / 2, '');
  }
}

/** Smallest step read, as a share of the scale between its stops. @throws RangeProblem for a scale outside its ranges */
export function resolutionRatio(scale: GaugeScale): number {
  requireScale(scale);
  const { start, end, step } = printedSpan(scale);
  return step / Math.abs(end - start);
}

/**
 * The reading as the owner's gauge prints it: "5/8", "E", "12.5 L", "3 bars", "45 %", "120".
 * A fraction between two marks is printed as one where halving a division gives it, else as a decimal.
 */
export function readingText(reading: GaugeReading, scale: GaugeScale): string {
  if (reading.at === 'emptyStop') return scale.kind === 'bars' ? '0 bars' : 'E';
  if (reading.at === 'fullStop') return scale.kind === 'bars' ? `all ${String(scale.count)} bars` : 'F';
  requireRange('positionRatio', reading.positionRatio, 0, 1, '');
  const { start, end } = printedSpan(scale);
  const printed = start + reading.positionRatio * (end - start);
  switch (scale.kind) {
    case 'fractions':
      return fractionText(printed, scale.denominator);
    case 'volume':
      return `${trimmed(printed)}\u00a0${scale.unit}`;
    case 'bars':
      return `${trimmed(printed)}\u00a0${printed === 1 ? 'bar' : 'bars'}`;
    case 'percent':
      return `${trimmed(printed)}\u00a0%`;
    case 'numbers':
      return trimmed(printed);
  }
}

/** Each mark of the scale from empty to full, the ends being the stops: for a card or an axis. */
export function scaleMarks(scale: GaugeScale): { reading: GaugeReading; text: string }[] {
  requireScale(scale);
  const { start, end, step } = printedSpan(scale);
  const divisionCount = Math.round(Math.abs(end - start) / step);
  const between = Array.from(
    { length: divisionCount - 1 },
    (_, i) => ((i + 1) * step) / Math.abs(end - start),
  );
  const readings: GaugeReading[] = [
    { at: 'emptyStop' },
    ...between
      .filter((positionRatio) => positionRatio < 1)
      .map((positionRatio): GaugeReading => ({ at: 'scale', positionRatio })),
    { at: 'fullStop' },
  ];
  return readings.map((reading) => ({ reading, text: readingText(reading, scale) }));
}

/** The step in words, to stand after "to the nearest": "eighth", "bar", "5 %", "2 L". */
export function divisionText(scale: GaugeScale): string {
  switch (scale.kind) {
    case 'fractions':
      return FRACTION_WORDS[scale.denominator] ?? `1/${String(scale.denominator)}`;
    case 'volume':
      return `${trimmed(scale.step)}\u00a0${scale.unit}`;
    case 'bars':
      return 'bar';
    case 'percent':
      return `${trimmed(scale.step)}\u00a0%`;
    case 'numbers':
      return trimmed(scale.step);
  }
}

/** What the scale prints at its stops, and its smallest step. @internal to this room */
export function printedSpan(scale: GaugeScale): { start: number; end: number; step: number } {
  switch (scale.kind) {
    case 'fractions':
      return { start: 0, end: 1, step: 1 / scale.denominator };
    case 'bars':
      return { start: 0, end: scale.count, step: 1 };
    case 'percent':
      return { start: 0, end: 100, step: scale.step };
    case 'volume':
    case 'numbers':
      return { start: scale.atEmpty, end: scale.atFull, step: scale.step };
  }
}

const FRACTION_WORDS: Readonly<Record<number, string>> = {
  2: 'half',
  3: 'third',
  4: 'quarter',
  5: 'fifth',
  6: 'sixth',
  8: 'eighth',
  10: 'tenth',
  12: 'twelfth',
  16: 'sixteenth',
};

function fractionText(value: number, denominator: number): string {
  const halves = value * denominator * 2;
  if (Math.abs(halves - Math.round(halves)) > 1e-6) return trimmed(value);
  const top = Math.round(halves);
  const bottom = denominator * 2;
  const shared = greatestCommonDivisor(top, bottom);
  return `${String(top / shared)}/${String(bottom / shared)}`;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

function trimmed(value: number): string {
  return String(Number(value.toFixed(3)));
}

function requireWhole(field: string, value: number): void {
  requireRange(field, value, 2, 100, '');
  if (!Number.isInteger(value))
    throw new InputProblem(field, `is ${String(value)}; a whole number was expected`);
}
