import { describe, expect, test } from 'vitest';
import { InputProblem, RangeProblem } from '../../../shared-calc/problem.ts';
import { justAbove, justBelow, type Exported, type RangeRow, type RoomRefusals } from './table.ts';

const tables = import.meta.glob<{ refusals?: RoomRefusals }>(['./*.ts', '!./table.ts', '!./*.test.ts'], {
  eager: true,
});
const modules = import.meta.glob<Record<string, unknown>>('../../../shared-calc/**/*.ts', { eager: true });

function isClass(value: Exported): boolean {
  return value.toString().startsWith('class');
}

function problemOf(call: () => unknown): unknown {
  try {
    call();
  } catch (problem) {
    return problem;
  }
  return undefined;
}

function expectRefused({ field, min, max, call }: RangeRow, value: number): void {
  const problem = problemOf(() => call(value));
  expect(problem, `${field} = ${String(value)} was not refused`).toBeInstanceOf(RangeProblem);
  expect(problem).toMatchObject({ field, value, min, max });
}

for (const [path, { refusals }] of Object.entries(tables)) {
  describe(path, () => {
    test('exports a table', () => {
      expect(refusals).toBeDefined();
    });
    for (const { of, ranges = [], refused = [] } of refusals?.functions ?? []) {
      for (const row of ranges) {
        test(`${of.name} takes ${row.field} from ${String(row.min)} to ${String(row.max)} and refuses it just outside`, () => {
          for (const end of [row.min, row.max]) {
            if (Number.isFinite(end)) expect(problemOf(() => row.call(end))).toBeUndefined();
          }
          if (Number.isFinite(row.min)) expectRefused(row, justBelow(row.min));
          if (Number.isFinite(row.max)) expectRefused(row, justAbove(row.max));
          for (const value of [NaN, Infinity, -Infinity]) expectRefused(row, value);
        });
      }
      for (const { when, call, sentence } of refused) {
        test(`${of.name} refuses ${when}`, () => {
          const problem = problemOf(call);
          expect(problem instanceof RangeProblem || problem instanceof InputProblem).toBe(true);
          expect((problem as Error).message).toMatch(sentence);
        });
      }
    }
  });
}

test('every exported function of shared-calc is in a table: with its ranges, or with the reason why it has none', () => {
  const named = new Set<unknown>();
  for (const { refusals } of Object.values(tables)) {
    for (const { of, ranges = [], refused = [] } of refusals?.functions ?? []) {
      if (ranges.length + refused.length > 0) named.add(of);
    }
    for (const [of, why] of refusals?.takeNoNumber ?? []) if (why !== '') named.add(of);
  }
  const missing = Object.entries(modules).flatMap(([path, exported]) =>
    Object.entries(exported)
      .filter(([, value]) => typeof value === 'function' && !isClass(value) && !named.has(value))
      .map(([name]) => `${path.replace('../../../', '')} ${name}`),
  );
  expect(missing).toEqual([]);
});
