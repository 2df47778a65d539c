// Numbers and dates straight from bytes: making strings of them would cost more than everything else together.

/** An empty or blank text. */
export const nothing = -(2 ** 31);
/** Something that is not a number. */
export const notANumber = nothing + 1;
/** Above this, a result is a number. */
export const numbersFrom = notANumber + 1;

const space = 32;
const minus = 45;
const plus = 43;
const point = 46;
const zero = 48;

/**
 * A decimal number in bytes, in hundredths, rounded half away from zero at the third decimal.
 * @returns the hundredths; `nothing` for blanks only; `notANumber` for anything else, and beyond 9 999 999
 */
export function hundredths(bytes: Uint8Array, from: number, to: number): number {
  let at = from;
  let end = to;
  while (at < end && bytes[at] === space) at++;
  while (end > at && bytes[end - 1] === space) end--;
  if (at === end) return nothing;
  let negative = false;
  const sign = bytes[at];
  if (sign === minus || sign === plus) {
    negative = sign === minus;
    at++;
  }
  let whole = 0;
  let digits = 0;
  for (; at < end; at++) {
    const digit = (bytes[at] ?? 0) - zero;
    if (digit < 0 || digit > 9) break;
    whole = whole * 10 + digit;
    digits++;
  }
  if (digits > 7) return notANumber;
  let value = whole * 100;
  if (at < end) {
    if (bytes[at] !== point) return notANumber;
    at++;
    let weight = 10;
    for (let place = 0; at < end; at++, place++) {
      const digit = (bytes[at] ?? 0) - zero;
      if (digit < 0 || digit > 9) return notANumber;
      digits++;
      if (place < 2) {
        value += digit * weight;
        weight = weight === 10 ? 1 : 0;
      } else if (place === 2 && digit >= 5) value++;
    }
  }
  if (digits === 0) return notANumber;
  return negative ? -value : value;
}

/** The same as hundredths, quicker for what most cells hold: some digits with one or two decimals. */
export function plainHundredths(bytes: Uint8Array, from: number, to: number): number {
  const negative = bytes[from] === minus;
  const first = negative ? from + 1 : from;
  let at = first;
  let value = 0;
  for (; at < to; at++) {
    const digit = (bytes[at] ?? 0) - zero;
    if (digit < 0 || digit > 9) break;
    value = value * 10 + digit;
  }
  const digits = at - first;
  if (digits === 0 || digits > 7) return hundredths(bytes, from, to);
  value *= 100;
  if (at < to) {
    const decimals = to - at - 1;
    const tenths = (bytes[at + 1] ?? 0) - zero;
    const last = decimals === 2 ? (bytes[at + 2] ?? 0) - zero : 0;
    if (bytes[at] !== point || decimals < 1 || decimals > 2) return hundredths(bytes, from, to);
    if (tenths < 0 || tenths > 9 || last < 0 || last > 9) return hundredths(bytes, from, to);
    value += tenths * 10 + last;
  }
  return negative ? -value : value;
}

/**
 * A whole number in bytes, blanks around it allowed.
 * @returns the number; `nothing` for blanks only; `notANumber` for anything else
 */
export function integer(bytes: Uint8Array, from: number, to: number): number {
  let at = from;
  let end = to;
  while (at < end && bytes[at] === space) at++;
  while (end > at && bytes[end - 1] === space) end--;
  if (at === end) return nothing;
  let negative = false;
  if (bytes[at] === minus) {
    negative = true;
    at++;
  }
  if (at === end || end - at > 9) return notANumber;
  let value = 0;
  for (; at < end; at++) {
    const digit = (bytes[at] ?? 0) - zero;
    if (digit < 0 || digit > 9) return notANumber;
    value = value * 10 + digit;
  }
  return negative ? -value : value;
}

/** Exactly `count` digits, or -1. */
export function fixedDigits(bytes: Uint8Array, from: number, count: number): number {
  let value = 0;
  for (let at = from; at < from + count; at++) {
    const digit = (bytes[at] ?? 0) - zero;
    if (digit < 0 || digit > 9) return -1;
    value = value * 10 + digit;
  }
  return value;
}

/** Bytes as text, for an example that a person reads. Bytes outside ASCII show as they are in Latin-1. */
export function textOf(bytes: Uint8Array, from: number, to: number): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset + from, to - from).toString('latin1');
}
