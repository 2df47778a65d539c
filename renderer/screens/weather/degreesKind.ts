import type { FieldKind, Reading } from '../../ui/fieldKind.ts';

/**
 * A latitude or longitude: decimal degrees with a sign or a letter, or degrees, minutes and seconds as charts print them
 * ('39 12 30 N', '105°36.5W').
 * @param letters for plus and minus: N and S, or E and W
 * @param most    90 or 180
 */
export function degreesKind(
  letters: readonly [plus: string, minus: string],
  most: number,
): FieldKind<number> {
  const [plus, minus] = letters;
  const range = `${String(most)} ${minus} to ${String(most)} ${plus}`;
  return {
    show: (valueDeg) => `${Number(Math.abs(valueDeg).toFixed(5)).toString()} ${valueDeg < 0 ? minus : plus}`,
    read: (text): Reading<number> => {
      const trimmed = text.trim().toUpperCase();
      if (trimmed === '') return { value: null };
      const letter = /^[A-Z]|[A-Z]$/.exec(trimmed)?.[0] ?? '';
      if (letter !== '' && letter !== plus && letter !== minus)
        return { refused: `Only ${plus} or ${minus} can stand here: ${range}.` };
      const parts = trimmed
        .replace(letter, '')
        .replace('\u2212', '-')
        .split(/[^\d.-]+/)
        .filter((part) => part !== '');
      const numbers = parts.map(Number);
      const [degrees = NaN, minutes = 0, seconds = 0] = numbers;
      const isNegative = trimmed.replace(letter, '').trim().replace('\u2212', '-').startsWith('-');
      const sound =
        parts.length >= 1 &&
        parts.length <= 3 &&
        numbers.every((part) => Number.isFinite(part)) &&
        minutes >= 0 &&
        minutes < 60 &&
        seconds >= 0 &&
        seconds < 60 &&
        (parts.length === 1 || Number.isInteger(degrees)) &&
        !(isNegative && letter !== '');
      if (!sound) return { refused: `'${text.trim()}' is not a place: 39.2083 ${plus} or 39 12 30 ${plus}.` };
      const size = Math.abs(degrees) + minutes / 60 + seconds / 3600;
      if (size > most) return { refused: `${text.trim()} is outside ${range}.` };
      const value = isNegative || letter === minus ? -size : size;
      return parts.length > 1
        ? { value, becomes: `becomes ${size.toFixed(4)} ${value < 0 ? minus : plus}` }
        : { value };
    },
    widthCount: 11,
    align: 'left',
  };
}
