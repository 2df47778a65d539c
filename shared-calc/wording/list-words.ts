/**
 * Names in a row, 'a, b and c'; more than a few are cut short, 'a, b, c and 9 more', so that a sentence stays one.
 * @param mostCount how many are named at most, 1 or more; one more than that is still named in full
 */
export function listWords(words: readonly string[], mostCount = 4): string {
  if (words.length > mostCount + 1) {
    const rest = words.length - mostCount;
    return `${words.slice(0, mostCount).join(', ')} and ${String(rest)} more`;
  }
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
