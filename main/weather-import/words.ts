// Digits several at a time: a word of four bytes holds four of them, and one reading of memory serves them all.
// The caller sees to it that so many bytes are there.

/** Four digits, or -1. */
export function fourDigits(view: DataView, at: number): number {
  const word = view.getInt32(at, true);
  // Every byte is 0x30 to 0x39: a 3 in its upper half, also with 6 added to it.
  if ((word & 0xf0f0f0f0) !== 0x30303030 || ((word + 0x06060606) & 0xf0f0f0f0) !== 0x30303030) return -1;
  const digits = word & 0x0f0f0f0f;
  // Two numbers of two digits, in the lowest byte and in the third; the first digit stands lowest.
  const pairs = (digits * 10 + (digits >>> 8)) & 0x00ff00ff;
  return (pairs & 0xff) * 100 + (pairs >>> 16);
}

/** Two digits, or -1. */
export function twoDigits(view: DataView, at: number): number {
  const word = view.getUint16(at, true);
  if ((word & 0xf0f0) !== 0x3030 || ((word + 0x0606) & 0xf0f0) !== 0x3030) return -1;
  return (word & 0x0f) * 10 + ((word >>> 8) & 0x0f);
}

/** Three digits, or -1. */
export function threeDigits(view: DataView, at: number): number {
  return before(twoDigits(view, at), view.getUint8(at + 2));
}

/** Five digits, or -1. */
export function fiveDigits(view: DataView, at: number): number {
  return before(fourDigits(view, at), view.getUint8(at + 4));
}

/** Six digits, or -1. */
export function sixDigits(view: DataView, at: number): number {
  const upper = fourDigits(view, at);
  const lower = twoDigits(view, at + 4);
  return upper < 0 || lower < 0 ? -1 : upper * 100 + lower;
}

function before(upper: number, last: number): number {
  const digit = last - 48;
  return upper < 0 || digit < 0 || digit > 9 ? -1 : upper * 10 + digit;
}
