/** Both true headings of a runway from that of its first end, degrees from 0 up to but not 360. */
export function headingsFor(firstDeg: number): [number, number] {
  const around = (deg: number) => (((Math.round(deg * 1000) / 1000) % 360) + 360) % 360;
  return [around(firstDeg), around(firstDeg + 180)];
}

/** A heading as it is written: three figures, north as 360. */
export function headingText(deg: number): string {
  const whole = Math.round(deg) % 360;
  return `${String(whole === 0 ? 360 : whole).padStart(3, '0')}°`;
}

/** The name painted at the other end: '09L' gives '27R'. null where the name is not a number of a runway. */
export function otherEnd(ident: string): string | null {
  const parts = /^(\d{1,2})([LRC]?)$/i.exec(ident.trim());
  const number = Number(parts?.[1]);
  if (parts === null || number < 1 || number > 36) return null;
  const other = number > 18 ? number - 18 : number + 18;
  const side = { L: 'R', R: 'L', C: 'C', '': '' }[(parts[2] ?? '').toUpperCase()] ?? '';
  return `${String(other).padStart(2, '0')}${side}`;
}
