import { plainText, readNumber } from '../units/parse-number.ts';
import type { GaugeReading } from './fill-run.ts';
import { printedSpan, readingText, requireScale } from './gauge-scale.ts';
import type { GaugeScale, VolumeOnGauge } from './gauge-scale.ts';

export type GaugeReadingParse =
  | { readonly ok: true; readonly reading: GaugeReading }
  | { readonly ok: false; readonly refusal: ReadingRefusal };

/** Why a typed reading was not taken, as data for a sentence. */
export type ReadingRefusal =
  | { readonly kind: 'notAReading'; readonly examples: readonly string[] }
  | { readonly kind: 'outsideScale'; readonly emptyText: string; readonly fullText: string }
  | { readonly kind: 'ambiguous'; readonly mayBe: readonly string[] }
  | { readonly kind: 'otherUnit'; readonly unitOnGauge: VolumeOnGauge };

/**
 * A typed reading on the owner's scale. "E" and "F" (or "empty", "full") and the printed ends are the stops.
 * Takes fractions ("5/8", a fraction sign), decimals with point or comma, and the unit that the gauge prints.
 * @returns the reading, or why it was not taken; what could mean two readings is refused with both named
 * @throws RangeProblem for a scale outside its ranges
 * @see readingText the other way round
 */
export function parseReading(text: string, scale: GaugeScale): GaugeReadingParse {
  requireScale(scale);
  const typed = plainText(text).toLowerCase();
  if (/^(e|empty)$/.test(typed)) return taken({ at: 'emptyStop' });
  if (/^(f|full|all)$/.test(typed)) return taken({ at: 'fullStop' });
  switch (scale.kind) {
    case 'fractions':
      return parseFraction(typed, scale);
    case 'bars':
      return parseBars(typed, scale);
    case 'percent':
      return parsePercent(typed, scale);
    case 'volume':
      return parseVolume(typed, scale);
    case 'numbers':
      return onScale(typed, scale);
  }
}

type ScaleOf<Kind extends GaugeScale['kind']> = Extract<GaugeScale, { kind: Kind }>;

const UNIT_WORDS: readonly { words: RegExp; units: readonly VolumeOnGauge[] }[] = [
  { words: /^(l|lit(re|er)s?)$/, units: ['L'] },
  { words: /^(us ?gal(lons?)?|usg)$/, units: ['US gal'] },
  { words: /^(imp(erial)? ?gal(lons?)?|uk ?gal(lons?)?)$/, units: ['imp gal'] },
  // Without a country the gauge's own gallon is meant.
  { words: /^gal(lons?)?$/, units: ['US gal', 'imp gal'] },
];

function parseFraction(typed: string, scale: ScaleOf<'fractions'>): GaugeReadingParse {
  const percent = /^(.*?) ?%$/.exec(typed)?.[1];
  if (percent !== undefined) return onScale(percent, scale, 1 / 100);
  // "5" on a scale of eighths may be five divisions; "1" may be the first division or full.
  const whole = /^\d+$/.test(typed) ? Number(typed) : 0;
  if (whole >= 1 && whole <= scale.denominator) {
    const division = `${String(whole)}/${String(scale.denominator)}`;
    return refused({ kind: 'ambiguous', mayBe: whole === 1 ? [division, 'F'] : [division] });
  }
  return onScale(typed, scale);
}

function parseBars(typed: string, scale: ScaleOf<'bars'>): GaugeReadingParse {
  const [, lit, outOf] = /^(\d{1,3})(?: ?\/ ?(\d{1,3}))?(?: bars?)?$/.exec(typed) ?? [];
  if (lit === undefined || (outOf !== undefined && Number(outOf) !== scale.count)) return notAReading(scale);
  return onScale(lit, scale);
}

function parsePercent(typed: string, scale: ScaleOf<'percent'>): GaugeReadingParse {
  if (typed.endsWith('%')) return onScale(typed.slice(0, -1), scale);
  const reading = readNumber(typed);
  if (reading.kind === 'one' && reading.value > 0 && reading.value < 1) {
    const asShare = String(Number((reading.value * 100).toFixed(6)));
    return refused({ kind: 'ambiguous', mayBe: [`${String(reading.value)} %`, `${asShare} %`] });
  }
  return onScale(typed, scale);
}

function parseVolume(typed: string, scale: ScaleOf<'volume'>): GaugeReadingParse {
  const [, figure = '', unit = ''] = /^([^a-z]*)([a-z .]*)$/.exec(typed) ?? [];
  const plainUnit = unit.replaceAll('.', '').trim();
  if (plainUnit !== '') {
    const meant = UNIT_WORDS.find(({ words }) => words.test(plainUnit));
    if (meant === undefined) return notAReading(scale);
    if (!meant.units.includes(scale.unit)) return refused({ kind: 'otherUnit', unitOnGauge: scale.unit });
  }
  return onScale(figure, scale);
}

/** A typed number as the gauge prints it, or as `factor` of it. */
function onScale(figure: string, scale: GaugeScale, factor = 1): GaugeReadingParse {
  const number = readNumber(figure);
  if (number.kind === 'none') return notAReading(scale);
  if (number.kind === 'two') {
    return refused({ kind: 'ambiguous', mayBe: number.readings.map((reading) => reading.text) });
  }
  const { start, end } = printedSpan(scale);
  const positionRatio = (number.value * factor - start) / (end - start);
  if (Math.abs(positionRatio) < 1e-9) return taken({ at: 'emptyStop' });
  if (Math.abs(positionRatio - 1) < 1e-9) return taken({ at: 'fullStop' });
  if (positionRatio < 0 || positionRatio > 1) {
    return refused({ kind: 'outsideScale', emptyText: String(start), fullText: String(end) });
  }
  return taken({ at: 'scale', positionRatio });
}

function notAReading(scale: GaugeScale): GaugeReadingParse {
  const middle = readingText({ at: 'scale', positionRatio: middleMarkRatio(scale) }, scale);
  return refused({ kind: 'notAReading', examples: ['E', middle, 'F'] });
}

function middleMarkRatio(scale: GaugeScale): number {
  const { start, end, step } = printedSpan(scale);
  const divisions = Math.round(Math.abs(end - start) / step);
  return Math.ceil(divisions / 2) / divisions;
}

function taken(reading: GaugeReading): GaugeReadingParse {
  return { ok: true, reading };
}

function refused(refusal: ReadingRefusal): GaugeReadingParse {
  return { ok: false, refusal };
}
