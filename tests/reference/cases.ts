import { readFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';

/** A published figure as the file prints it: a value and the unit it is printed in; `null` where the source has none. */
export type Printed = { value: number | string | boolean | null | number[]; unit: string };

/** How far a computed figure may lie from the printed one. `abs` is in the printed unit, for a list each element. */
export type Tolerance = { abs: number; each?: true } | { minutes: number } | { exact: true };

export type PublishedCase = {
  id: string;
  topic: Topic;
  title: string;
  source: { title: string; edition: string; locator: string; url: string };
  provenance: string;
  recomputed: string;
  /** As printed; mostly name to {value, unit}, some are lists or tables. Read them with `inputOf` and `textOf`. */
  inputs: Record<string, unknown>;
  expected: Record<string, Printed>;
  tolerance: Record<string, Tolerance>;
  tolerance_why: string;
  note: string | null;
};

export const TOPICS = [
  'loading',
  'atmosphere',
  'performance',
  'calibration',
  'sun',
  'METAR',
  'turn-back',
  'fuel and units',
] as const;
export type Topic = (typeof TOPICS)[number];

/** What a calculation gave: numbers in the unit in which the case prints them; times as epoch seconds or ISO text in UTC. */
export type Actual = Record<string, number | string | boolean | null | readonly number[]>;

const REPORT_FOLDER = new URL('../report/published/', import.meta.url);

const allCases = (
  JSON.parse(readFileSync(new URL('./published-checks.json', import.meta.url), 'utf8')) as {
    cases: PublishedCase[];
  }
).cases;

export function casesOf(topic: Topic): PublishedCase[] {
  return allCases.filter((one) => one.topic === topic);
}

export function everyCase(): readonly PublishedCase[] {
  return allCases;
}

export function caseById(id: string): PublishedCase {
  const found = allCases.find((one) => one.id === id);
  if (found === undefined) throw new Error(`there is no published case ${id}`);
  return found;
}

/** The number of a plain input; a given unit must be the printed one, so that no test misreads feet as metres. */
export function inputOf(published: PublishedCase, name: string, unit?: string): number {
  const input = published.inputs[name] as { value?: unknown; unit?: unknown } | undefined;
  if (typeof input?.value !== 'number') throw new Error(`${published.id} has no number called ${name}`);
  if (unit !== undefined && input.unit !== unit) {
    throw new Error(`${published.id} prints ${name} in ${String(input.unit)}, not in ${unit}`);
  }
  return input.value;
}

/** The unit in which a plain input is printed. */
export function unitOf(published: PublishedCase, name: string): string {
  const input = published.inputs[name] as { unit?: unknown } | undefined;
  if (typeof input?.unit !== 'string') throw new Error(`${published.id} has no unit for ${name}`);
  return input.unit;
}

/** A textual input (a report, a group). */
export function textOf(published: PublishedCase, name: string): string {
  const input = published.inputs[name];
  const value = typeof input === 'string' ? input : (input as { value?: unknown } | undefined)?.value;
  if (typeof value !== 'string') throw new Error(`${published.id} has no text called ${name}`);
  return value;
}

export type Verdict = { failures: string[]; largestShare: number };

/**
 * Compare what was computed with what was published, each name inside its own tolerance.
 * Every expected name must be there, and no other: a misspelt name is a failure, not a check left out.
 */
export function compare(published: PublishedCase, actual: Actual): Verdict {
  const verdict: Verdict = { failures: [], largestShare: 0 };
  for (const name of Object.keys(actual)) {
    if (!(name in published.expected)) verdict.failures.push(`${name} is not a published name`);
  }
  for (const [name, printed] of Object.entries(published.expected)) {
    const tolerance = published.tolerance[name];
    if (tolerance === undefined) verdict.failures.push(`${name} has no tolerance`);
    else if (!(name in actual)) verdict.failures.push(`${name} was not computed`);
    else compareOne(name, printed, actual[name], tolerance, verdict);
  }
  return verdict;
}

function compareOne(
  name: string,
  printed: Printed,
  actual: Actual[string] | undefined,
  tolerance: Tolerance,
  verdict: Verdict,
): void {
  const { value, unit } = printed;
  const unlike = () => {
    verdict.failures.push(`${name} is ${JSON.stringify(actual)}; published ${JSON.stringify(value)} ${unit}`);
  };
  if ('exact' in tolerance || value === null) {
    if (actual !== value) unlike();
    return;
  }
  if (Array.isArray(value)) {
    if (!Array.isArray(actual) || actual.length !== value.length) {
      unlike();
      return;
    }
    value.forEach((element, i) => {
      const one: unknown = actual[i];
      if (typeof one !== 'number') unlike();
      else within(`${name}[${String(i)}]`, element, one, tolerance, unit, verdict);
    });
    return;
  }
  if ('minutes' in tolerance) {
    const published = typeof value === 'string' ? Date.parse(value) / 60_000 : NaN;
    const computed = typeof actual === 'number' ? actual / 60 : Date.parse(String(actual)) / 60_000;
    within(name, published, computed, { abs: tolerance.minutes }, 'min', verdict);
    return;
  }
  if (typeof value !== 'number' || typeof actual !== 'number') unlike();
  else within(name, value, actual, tolerance, unit, verdict);
}

function within(
  name: string,
  published: number,
  computed: number,
  tolerance: Tolerance,
  unit: string,
  verdict: Verdict,
): void {
  const allowed = 'abs' in tolerance ? tolerance.abs : 0;
  const difference = computed - published;
  if (!(Math.abs(difference) <= allowed)) {
    verdict.failures.push(
      `${name} is ${String(computed)} ${unit}; published ${String(published)}, off by ${String(difference)}, allowed ${String(allowed)}`,
    );
    return;
  }
  if (difference !== 0)
    verdict.largestShare = Math.max(verdict.largestShare, Math.abs(difference) / allowed);
}

/**
 * Check one published case and note the share of its tolerance that was used, for the table after the tests.
 * @param id     of the case, as in published-checks.json
 * @param actual every expected name, in the printed unit
 */
export function checkCase(id: string, actual: Actual): void {
  const published = caseById(id);
  const verdict = compare(published, actual);
  mkdirSync(REPORT_FOLDER, { recursive: true });
  writeFileSync(
    new URL(`${id}.json`, REPORT_FOLDER),
    JSON.stringify({
      id,
      source: published.source.title,
      share: verdict.largestShare,
      passed: verdict.failures.length === 0,
    }),
  );
  const { title, edition, locator } = published.source;
  expect(verdict.failures, `${id} ${published.title} (${title}, ${edition}, ${locator})`).toEqual([]);
}

/**
 * One test for every case of a topic, from a table of what computes it; and a test that the table misses none.
 * @param table case id to a function that computes every expected name from the case's inputs
 */
export function publishedChecks(
  topic: Topic,
  table: Record<string, (published: PublishedCase) => Actual>,
): void {
  const published = casesOf(topic);
  for (const one of published) {
    const compute = table[one.id];
    if (compute === undefined) continue;
    test(`${one.id} ${one.title}`, () => {
      checkCase(one.id, compute(one));
    });
  }
  test(`every published case on ${topic} is computed`, () => {
    expect(Object.keys(table).sort()).toEqual(published.map((one) => one.id).sort());
  });
}

/** The same computation for several cases, for a `publishedChecks` table: `...alike(numbered('ATM', 1, 10), (c) => ...)`. */
export function alike(
  ids: readonly string[],
  compute: (published: PublishedCase) => Actual,
): Record<string, (published: PublishedCase) => Actual> {
  return Object.fromEntries(ids.map((id) => [id, compute]));
}

/** Case ids from `first` to `last`: numbered('ATM', 1, 3) is ATM-001, ATM-002, ATM-003. */
export function numbered(prefix: string, first: number, last: number): string[] {
  return Array.from(
    { length: last - first + 1 },
    (_, i) => `${prefix}-${String(first + i).padStart(3, '0')}`,
  );
}
