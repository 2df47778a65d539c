import type { z } from 'zod';
import { Refusal } from './problem.ts';

/** How a unit at the end of a field's name is written for people. */
const unitWords: [suffix: RegExp, unit: string][] = [
  [/KgPerL$/, 'kg/L'],
  [/LPerH$/, 'L/h'],
  [/KgM$/, 'kg m'],
  [/Kg$/, 'kg'],
  [/Hpa$/, 'hPa'],
  [/Percent$/, '%'],
  [/Deg$/, 'degrees'],
  [/Ms$/, 'm/s'],
  [/EpochS$/, ''],
  [/S$/, 's'],
  [/C$/, 'degC'],
  [/M$/, 'm'],
  [/L$/, 'L'],
];

/** Say what the schema refused, field by field: path, value with its unit, and what is allowed. */
export function inputRefused(request: string, error: z.ZodError, input: unknown): Refusal {
  const fields = error.issues.map((issue) => {
    const path = pathText(issue.path);
    return {
      path,
      sentence: `${path === '' ? 'The input' : path} ${issueText(issue, valueAt(input, issue.path), path)}`,
    };
  });
  const sentence = `${fields.map((field) => field.sentence).join('; ')}. Nothing was changed.`;
  return new Refusal('input-refused', `${request}: ${sentence}`, fields);
}

function issueText(issue: z.core.$ZodIssue, value: unknown, path: string): string {
  const unit = unitWords.find(([suffix]) => suffix.test(path))?.[1] ?? '';
  const withUnit = (figure: unknown) => (unit === '' ? String(figure) : `${String(figure)} ${unit}`);
  switch (issue.code) {
    case 'too_small':
      return issue.origin === 'number' || issue.origin === 'int'
        ? `is ${withUnit(value)}; allowed ${issue.inclusive === false ? 'above' : 'at least'} ${withUnit(issue.minimum)}`
        : `has ${lengthOf(value)}; at least ${String(issue.minimum)} needed`;
    case 'too_big':
      return issue.origin === 'number' || issue.origin === 'int'
        ? `is ${withUnit(value)}; allowed ${issue.inclusive === false ? 'below' : 'at most'} ${withUnit(issue.maximum)}`
        : `has ${lengthOf(value)}; at most ${String(issue.maximum)} allowed`;
    case 'invalid_type':
      return value === undefined
        ? 'is missing'
        : `is ${quoted(value)}; ${expectedWord(issue.expected)} was expected`;
    case 'unrecognized_keys':
      return `has no field ${issue.keys.map((key) => `'${key}'`).join(', ')}`;
    case 'invalid_value':
      return `is ${quoted(value)}; allowed ${issue.values.map((each) => quoted(each)).join(', ')}`;
    default:
      return `is ${quoted(value)}: ${issue.message}`;
  }
}

function expectedWord(expected: string): string {
  const words: Record<string, string> = {
    number: 'a number',
    string: 'a text',
    boolean: 'true or false',
    array: 'a list',
    object: 'an object',
    int: 'a whole number',
  };
  return words[expected] ?? expected;
}

function quoted(value: unknown): string {
  const text = JSON.stringify(value) as string | undefined;
  if (text === undefined) return String(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

function lengthOf(value: unknown): string {
  if (typeof value === 'string') return `${String(value.length)} letters`;
  return Array.isArray(value) ? `${String(value.length)} entries` : 'too few entries';
}

function pathText(path: PropertyKey[]): string {
  return path.reduce<string>(
    (text, part) =>
      typeof part === 'number'
        ? `${text}[${String(part)}]`
        : text === ''
          ? String(part)
          : `${text}.${String(part)}`,
    '',
  );
}

function valueAt(input: unknown, path: PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, part) =>
      typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[part] : undefined,
    input,
  );
}
