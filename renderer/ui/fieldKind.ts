import { readNumber } from '../../shared-calc/units/parse-number.ts';

/**
 * What a typed text means: a value (null for nothing), perhaps with what it becomes; or a sentence that refuses it,
 * perhaps with the ways in which it could be meant; or a doubt whether it was meant so, to be settled by one of its ways.
 */
export type Reading<V> =
  { value: V | null; becomes?: string } | { refused: string; ways?: readonly Way<V>[]; isDoubt?: boolean };

/** One way in which a text could be meant, with the verb that takes it ('Take it as 1.020 kg'). */
export interface Way<V> {
  verb: string;
  value: V;
}

/** What a field holds: how it is shown, how a text is read, and what an arrow key does. */
export interface FieldKind<V> {
  show(value: V): string;
  read(text: string): Reading<V>;
  /** One step up (1) or down (-1), ten with Shift; absent where a step means nothing. */
  step?(value: V | null, steps: number): V;
  /** How wide the field is, in characters. */
  widthCount: number;
  /** Figures stand at the right, words at the left. */
  align: 'left' | 'right';
  /** Shown after the field, at rest. */
  unit?: string;
}

/** Any line of text. */
export function textKind(most: number, widthCount = 18): FieldKind<string> {
  return {
    show: (value) => value,
    read: (text) => {
      const trimmed = text.trim();
      if (trimmed.length > most)
        return { refused: `${String(trimmed.length)} letters; at most ${String(most)} fit.` };
      return { value: trimmed === '' ? null : trimmed };
    },
    widthCount,
    align: 'left',
  };
}

/** A whole number between two ends, both allowed. */
export function wholeKind(min: number, max: number): FieldKind<number> {
  return {
    show: (value) => String(value),
    read: (text) => {
      const trimmed = text.trim();
      if (trimmed === '') return { value: null };
      const value = Number(trimmed);
      if (!/^[+-]?\d+$/.test(trimmed)) return { refused: `'${trimmed}' is not a whole number.` };
      if (value < min || value > max)
        return { refused: `${trimmed} is outside ${String(min)} to ${String(max)}.` };
      return { value };
    },
    step: (value, steps) => Math.min(max, Math.max(min, (value ?? min) + steps)),
    widthCount: Math.max(String(min).length, String(max).length) + 1,
    align: 'right',
  };
}

/** Any number without a unit, as people write it: '13.5', '29,92', '1 320'. */
export function decimalKind(widthCount: number): FieldKind<number> {
  return {
    show: (value) => String(value),
    read: (text) => {
      if (text.trim() === '') return { value: null };
      const reading = readNumber(text);
      if (reading.kind === 'one') return { value: reading.value };
      if (reading.kind === 'none') return { refused: `${reading.why}.` };
      return {
        refused: `'${text.trim()}' can be read in two ways.`,
        ways: reading.readings.map(({ text: way, value }) => ({ verb: `Take it as ${way}`, value })),
      };
    },
    widthCount,
    align: 'right',
  };
}
