/** A wished name, or the first numbered one that no other has; names are at most 80 signs long. */
export function freeName(wished: string, taken: readonly string[]): string {
  const name = wished.slice(0, 80);
  if (!taken.includes(name)) return name;
  for (let count = 2; ; count += 1) {
    const number = ` ${String(count)}`;
    const numbered = `${wished.slice(0, 80 - number.length)}${number}`;
    if (!taken.includes(numbered)) return numbered;
  }
}
