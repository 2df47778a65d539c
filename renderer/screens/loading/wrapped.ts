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
