/**
 * A text broken at its blanks into lines that fit; a word wider than the room stands alone on its line.
 * @param widthOf width of a text, in the unit of `roomPx`
 */
export function wrapped(text: string, roomPx: number, widthOf: (text: string) => number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && widthOf(longer) > roomPx) lines.push(word);
    else lines[Math.max(0, lines.length - 1)] = longer;
  }
  return lines;
}

/**
 * A name that fits: one that is too long ends in '…'. What is cut has to stand in full elsewhere.
 * @param widthOf as for wrapped
 */
export function cutTo(text: string, roomPx: number, widthOf: (text: string) => number): string {
  if (widthOf(text) <= roomPx) return text;
  const letters = [...text];
  let count = letters.length;
  const cut = () => `${letters.slice(0, count).join('').trimEnd()}…`;
  while (count > 1 && widthOf(cut()) > roomPx) count--;
  return cut();
}
