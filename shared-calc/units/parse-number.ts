/** What a typed numeral can mean: one number, two (the comma of "1,320"), or none. */
export type NumberReading =
  | { kind: 'one'; value: number }
  | { kind: 'two'; readings: readonly [{ text: string; value: number }, { text: string; value: number }] }
  | { kind: 'none'; why: string };

const GLYPH_FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** Bring what keyboards, clipboards and the program's own figures contain to plain characters. */
export function plainText(text: string): string {
  return text
    .replace(/[½⅓⅔¼¾⅛⅜⅝⅞]/g, (glyph) => ` ${GLYPH_FRACTIONS[glyph] ?? ''}`)
    .replace(/[\u2060\u200b\ufeff]/g, '')
    .replace(/\s/g, ' ')
    .replace(/[\u2212\u2010\u2011\u2012\u2013]/g, '-')
    .replace(/[\u2032\u2019\u2018]/g, "'")
    .replace(/[\u2033\u201d\u201c]/g, '"')
    .replace(/\u2044/g, '/')
    .replace(/ +/g, ' ')
    .trim();
}

/**
 * Read a numeral without its unit: "13.5", "1 320", "29,92", "7 1/2", "1,320.5", "1.320,5".
 *
 * A point alone is always a decimal point, as the program itself writes it. A comma alone is a decimal comma unless
 * exactly three figures follow a group that could be thousands: "1,320" has two readings and is not decided here.
 * Blanks may part thousands. A sign may stand in front.
 */
export function readNumber(text: string): NumberReading {
  const signed = /^([+-]?) ?(.*)$/.exec(plainText(text));
  const sign = signed?.[1] === '-' ? -1 : 1;
  const reading = readUnsigned(signed?.[2] ?? '');
  if (reading.kind === 'none') return reading;
  if (reading.kind === 'one') return one(sign * reading.value);
  const [first, second] = reading.readings;
  const lead = sign < 0 ? '-' : '';
  return {
    kind: 'two',
    readings: [
      { text: lead + first.text, value: sign * first.value },
      { text: lead + second.text, value: sign * second.value },
    ],
  };
}

function one(value: number): NumberReading {
  return { kind: 'one', value: value === 0 ? 0 : value };
}

function none(why: string): NumberReading {
  return { kind: 'none', why };
}

function readUnsigned(text: string): NumberReading {
  const fraction = /^(?:(\d+)[ -])?(\d+) ?\/ ?(\d+)$/.exec(text);
  if (fraction !== null) {
    const [, whole = '0', over = '', under = ''] = fraction;
    if (Number(under) === 0) return none('a fraction cannot have 0 below the line');
    return one(Number(whole) + Number(over) / Number(under));
  }
  const ungrouped = withoutBlankGroups(text);
  if (ungrouped === undefined) return none(`"${text}" is not a number`);
  const commas = ungrouped.split(',').length - 1;
  const points = ungrouped.split('.').length - 1;
  if (commas === 0 && points <= 1) return decimal(ungrouped);
  if (points === 0 && commas === 1) return oneComma(ungrouped);
  if (points === 0 || commas === 0) return grouped(ungrouped, points === 0 ? ',' : '.', '');
  const decimalMark = ungrouped.lastIndexOf(',') > ungrouped.lastIndexOf('.') ? ',' : '.';
  return grouped(ungrouped, decimalMark === ',' ? '.' : ',', decimalMark);
}

function decimal(text: string): NumberReading {
  return /^(\d+\.?\d*|\.\d+)$/.test(text) ? one(Number(text)) : none(`"${text}" is not a number`);
}

function oneComma(text: string): NumberReading {
  const asDecimal = decimal(text.replace(',', '.'));
  if (asDecimal.kind !== 'one' || !/^[1-9]\d{0,2},\d{3}$/.test(text)) return asDecimal;
  const thousands = text.replace(',', '');
  return {
    kind: 'two',
    readings: [
      { text: thousands, value: Number(thousands) },
      { text: text.replace(',', '.'), value: asDecimal.value },
    ],
  };
}

/** Several marks of one kind can only part thousands; of two kinds, the last is the decimal mark. */
function grouped(text: string, groupMark: string, decimalMark: string): NumberReading {
  const [whole = '', fraction = '', more] = decimalMark === '' ? [text] : text.split(decimalMark);
  const groups = whole.split(groupMark);
  const goodGroups = groups.every((group, i) => (i === 0 ? /^[1-9]\d{0,2}$/ : /^\d{3}$/).test(group));
  if (!goodGroups || more !== undefined || !/^\d*$/.test(fraction)) return none(`"${text}" is not a number`);
  return one(Number(`${groups.join('')}.${fraction}`));
}

function withoutBlankGroups(text: string): string | undefined {
  if (!text.includes(' ')) return text;
  return /^[1-9]\d{0,2}( \d{3})+([.,]\d+)?$/.test(text) ? text.replaceAll(' ', '') : undefined;
}
