import { toSi } from './convert.ts';
import { plainText, readNumber, type NumberReading } from './parse-number.ts';
import { QUANTITIES, type Quantity, type UnitOf } from './quantities.ts';
import { UNITS, lowestIn, type Unit } from './unit-table.ts';

export type Reading = { text: string; valueSi: number };

/**
 * What a person typed, in the unit kept inside, and the unit it was typed in; or the sentence that says why not, with
 * both readings where there are two. The sentence ends without saying that the text is kept: the field does that.
 */
export type ParsedQuantity<U extends Unit = Unit> =
  { ok: true; valueSi: number; unit: U } | { ok: false; sentence: string; readings: readonly Reading[] };

/**
 * Read what a person types into a field: "13.5 gal", "1 320 lb", "29,92 inHg", "7' 4 1/2\"", "-3.5C", "2 h 35 min".
 *
 * Without a unit the field's own is meant. "gal" is the US gallon unless the field's own unit is the imperial one, as in
 * handbooks; write "imp gal" for the other. No other unit is guessed, whatever the size of the number: a field with a
 * range refuses 29.92 hPa itself. "A2992" and "Q1013" are read as in a weather report where a pressure is asked.
 * @param quantity    decides which units can be meant ("in" is an inch of an arm, an inch of mercury of a pressure)
 * @param defaultUnit of the field
 * @returns a value, never an exception: what is typed wrongly is no fault of the program
 */
export function parseQuantity<Q extends Quantity>(
  text: string,
  quantity: Q,
  defaultUnit: UnitOf[Q],
): ParsedQuantity<UnitOf[Q]> {
  const typed = plainText(text);
  if (typed === '') return refusal(`Nothing is typed; ${QUANTITIES[quantity].words} was expected.`);
  const units = QUANTITIES[quantity].units.map((one) => one.unit as UnitOf[Q]);
  return (
    reportGroup(typed, units) ?? clockSpan(typed, units) ?? plainFigure(typed, quantity, units, defaultUnit)
  );
}

type Parsed<U extends Unit> = ParsedQuantity<U>;

function refusal(
  sentence: string,
  readings: readonly Reading[] = [],
): { ok: false; sentence: string; readings: readonly Reading[] } {
  return { ok: false, sentence, readings };
}

function has<U extends Unit>(units: readonly U[], unit: Unit): U | undefined {
  return units.find((one) => one === unit);
}

/** "A2992" and "Q1013", the altimeter groups of a weather report. */
function reportGroup<U extends Unit>(typed: string, units: readonly U[]): Parsed<U> | undefined {
  const group = /^([AQ])(\d{4})$/i.exec(typed);
  if (group === null) return undefined;
  const inches = group[1]?.toUpperCase() === 'A';
  const unit = has(units, inches ? 'inHg' : 'hPa');
  if (unit === undefined) return undefined;
  return { ok: true, valueSi: toSi(Number(group[2]) / (inches ? 100 : 1), unit), unit };
}

/** "2:35" of a time span is hours and minutes. */
function clockSpan<U extends Unit>(typed: string, units: readonly U[]): Parsed<U> | undefined {
  const clock = /^(\d{1,3}):([0-5]\d)$/.exec(typed);
  const unit = has(units, 'h');
  if (clock === null || unit === undefined) return undefined;
  return { ok: true, valueSi: Number(clock[1]) * 3600 + Number(clock[2]) * 60, unit };
}

const NUMERAL = /^([+-]? ?(?:[\d.,][\d., /-]*\d|\d)\.?)(.*)$/;

function plainFigure<U extends Unit>(
  typed: string,
  quantity: Quantity,
  units: readonly U[],
  defaultUnit: U,
): Parsed<U> {
  const split = NUMERAL.exec(typed);
  if (split === null) {
    return refusal(`"${typed}" does not begin with a number; ${QUANTITIES[quantity].words} was expected.`);
  }
  const [, numeral = '', rest = ''] = split;
  const suffix = rest.trim();
  const unit = unitOf(suffix, units, defaultUnit);
  if (unit !== undefined) return withUnit(readNumber(numeral), typed, unit);
  return compound(numeral, suffix, typed, units) ?? refusal(unknownUnit(suffix, quantity, units));
}

function withUnit<U extends Unit>(reading: NumberReading, typed: string, unit: U): Parsed<U> {
  if (reading.kind === 'none') return refusal(sentenceOf(reading.why));
  const values = reading.kind === 'one' ? [{ text: typed, value: reading.value }] : reading.readings;
  const possible = values.filter(({ value }) => value >= lowestIn(unit));
  const readings = possible.map(({ text, value }) => ({
    text: `${text} ${UNITS[unit].label}`.trim(),
    valueSi: toSi(value, unit),
  }));
  const [first, second] = readings;
  if (first === undefined) return refusal(`"${typed}" is below absolute zero.`);
  if (second === undefined) return { ok: true, valueSi: first.valueSi, unit };
  return refusal(
    `"${typed}" can be read as ${first.text} or as ${second.text}; write it without the comma, or with a point.`,
    readings,
  );
}

function sentenceOf(why: string): string {
  return `${why.charAt(0).toUpperCase()}${why.slice(1)}.`;
}

function unitOf<U extends Unit>(suffix: string, units: readonly U[], defaultUnit: U): U | undefined {
  if (suffix === '') return defaultUnit;
  const spelling = suffix.toLowerCase();
  // The field's own unit first: "%" and "°" can belong to two.
  const ordered = [defaultUnit, ...units];
  const found = ordered.find((unit) => UNITS[unit].spellings.includes(spelling));
  if (found !== undefined) return found;
  return galUnit(spelling, units, defaultUnit);
}

/** "gal", "gph", "lb/gal": the field's own gallon, else the US one. */
function galUnit<U extends Unit>(spelling: string, units: readonly U[], defaultUnit: U): U | undefined {
  const bare = spelling
    .replace(/^gph$/, 'gal/h')
    .replace(/\bgal(lon)?s?\b\.?/, 'gal')
    .replace(/\/hr$/, '/h')
    .replace(/^lbs\//, 'lb/');
  if (!/(^|\/)gal(\/h)?$/.test(bare)) return undefined;
  const nation = defaultUnit.includes('imp gal') ? 'imp gal' : 'US gal';
  return units.find((unit) => unit === bare.replace('gal', nation));
}

const SMALLER: readonly [big: Unit, small: Unit, count: number][] = [
  ['ft', 'in', 12],
  ['h', 'min', 60],
  ['min', 's', 60],
];

/** Feet and inches, hours and minutes: the second figure may leave its unit out and must be less than one of the first. */
function compound<U extends Unit>(
  numeral: string,
  suffix: string,
  typed: string,
  units: readonly U[],
): Parsed<U> | undefined {
  const parts = /^([^\d]+?) ?((?:\d|\.\d).*)$/.exec(suffix);
  const smaller = NUMERAL.exec(parts?.[2] ?? '');
  if (parts === null || smaller === null) return undefined;
  // A hyphen close behind the foot mark joins the two, as on drawings: 7'-4 1/2".
  const bigWord = (parts[1] ?? '')
    .trim()
    .toLowerCase()
    .replace(/^('|ft)-$/, '$1');
  const smallWord = (smaller[2] ?? '').trim().toLowerCase();
  for (const [big, small, count] of SMALLER) {
    const unit = has(units, big);
    if (unit === undefined || !UNITS[big].spellings.includes(bigWord)) continue;
    if (smallWord !== '' && !UNITS[small].spellings.includes(smallWord)) continue;
    const first = readNumber(numeral);
    const second = readNumber(smaller[1] ?? '');
    if (first.kind !== 'one' || second.kind !== 'one') return refusal(`"${typed}" is not a number.`);
    if (!Number.isInteger(first.value) || !(second.value < count)) {
      return refusal(
        `"${typed}": ${UNITS[big].label} must be a whole number and ${UNITS[small].label} less than ${String(count)}.`,
      );
    }
    const negative = numeral.startsWith('-');
    const inSmall = Math.abs(first.value) * count + second.value;
    return { ok: true, valueSi: toSi(negative ? -inSmall : inSmall, small), unit };
  }
  return undefined;
}

function unknownUnit(suffix: string, quantity: Quantity, units: readonly Unit[]): string {
  const labels = units.map((unit) => UNITS[unit].label);
  const expected =
    labels.length === 1 ? labels.join('') : `${labels.slice(0, -1).join(', ')} or ${labels.at(-1) ?? ''}`;
  const spelling = suffix.toLowerCase();
  const foreign = Object.values(UNITS).find(
    (unit) => unit.spellings.includes(spelling) || unit.label.toLowerCase() === spelling,
  );
  const known =
    foreign === undefined
      ? `"${suffix}" is not a known unit`
      : `"${suffix}" is a unit of ${foreign.dimension}`;
  return `${known}; ${QUANTITIES[quantity].words} was expected, in ${expected}.`;
}
