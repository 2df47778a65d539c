const WORDS = [
  'none',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
] as const;

/** A small count as a word, 'none' to 'twelve'; a larger one as figures. */
export function numberWord(count: number): string {
  return WORDS[count] ?? String(count);
}
