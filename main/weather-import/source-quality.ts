import { flag } from '../store/observation-columns.ts';
import { absent } from './check-ranges.ts';
import type { ProblemList } from './problems.ts';

/** What a source says of its own value. One rule for all formats: erroneous counts as missing, suspect is kept and marked. */
export type Verdict = 'good' | 'suspect' | 'erroneous' | 'unknown';

/**
 * Quality code of the Integrated Surface Data: 0, 1, 4, 5, 9 passed or unchecked; 2, 6 suspect; 3, 7 erroneous; letters
 * are edited values that may be used.
 * @param code the code's byte
 * @source Federal Climate Complex Data Documentation for Integrated Surface Data, mandatory data section
 */
export function isdVerdict(code: number): Verdict {
  // Bytes of 0, 1, 4, 5, 9 and A, C, I, M, P, R, U; then of 2, 6; then of 3, 7.
  switch (code) {
    case 48:
    case 49:
    case 52:
    case 53:
    case 57:
    case 65:
    case 67:
    case 73:
    case 77:
    case 80:
    case 82:
    case 85:
      return 'good';
    case 50:
    case 54:
      return 'suspect';
    case 51:
    case 55:
      return 'erroneous';
    default:
      return 'unknown';
  }
}

const passes = Uint8Array.from({ length: 256 }, (_, code) => (isdVerdict(code) === 'good' ? 1 : 0));

/** Whether that code's byte is one of those that say 'good', which most are. */
export function isdPasses(code: number): boolean {
  return passes[code] === 1;
}

/** Applies the rule to one row's values, collecting its flags. */
export class SourceQuality {
  flags = 0;
  readonly #problems: ProblemList;

  constructor(problems: ProblemList) {
    this.#problems = problems;
  }

  /**
   * @param value in the column's unit, or absent
   * @param inWords 'temperature'
   * @param suspectFlag flag.suspectBySource, or flag.suspectWindBySource for wind
   * @returns the value, or absent where it may not be used
   */
  apply(
    value: number,
    verdict: Verdict,
    inWords: string,
    suspectFlag: number,
    line: number,
    example: () => string,
  ): number {
    if (verdict === 'good' || value === absent) return value;
    if (verdict === 'suspect') {
      this.flags |= suspectFlag;
      const of = suspectFlag === flag.suspectBySource ? 'air' : 'wind';
      this.#problems.add(`${of} marked suspect by its source: kept, marked`, line, example);
      return value;
    }
    this.#problems.add(
      verdict === 'erroneous'
        ? `${inWords} marked erroneous by its source: value left out`
        : `${inWords} with a quality code that is not known: value left out`,
      line,
      example,
    );
    return absent;
  }
}
