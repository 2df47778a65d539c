/**
 * Every public function of shared-calc refuses each number just outside its range. A room says so in a table:
 * one file beside this one, named after the room, exporting `refusals`. `refusals.test.ts` runs all tables and fails
 * on an exported function that none of them names.
 *
 *   export const refusals: RoomRefusals = {
 *     functions: [
 *       byPosition(dryAirDensityKgM3, [
 *         { field: 'pressureHpa', min: 1, max: 1100, good: 1000 },
 *         { field: 'temperatureC', min: -90, max: 60, good: 15 },
 *       ]),
 *       // arguments in objects or lists: say how a value gets there
 *       { of: momentKgM, ranges: [{ field: 'stations[0].massKg', min: 0, max: 5000, call: (v) => momentKgM([{ massKg: v, armM: 1 }]) }] },
 *       // a refusal for another reason than the size of one number
 *       { of: areaOf, refused: [{ when: 'two points only', call: () => areaOf(twoPoints), sentence: /three points/ }] },
 *     ],
 *     takeNoNumber: [[unitLabel, 'takes the name of a unit']],
 *   };
 */

// eslint-disable-next-line @typescript-eslint/no-unsafe-function-type -- any exported function whatever, told apart by identity only
export type Exported = Function;

export type RangeRow = {
  /** as the RangeProblem names it */
  field: string;
  min: number;
  max: number;
  call: (value: number) => unknown;
};

export type OtherRefusal = { when: string; call: () => unknown; sentence: RegExp };

export type FunctionRefusals = { of: Exported; ranges?: RangeRow[]; refused?: OtherRefusal[] };

export type RoomRefusals = {
  functions: FunctionRefusals[];
  /** functions without a number to refuse, each with the reason */
  takeNoNumber: [of: Exported, why: string][];
};

/** Rows for a function whose arguments are plain numbers: each in turn goes out of its range while the others stay good. */
export function byPosition(
  of: (...args: number[]) => unknown,
  args: { field: string; min: number; max: number; good: number }[],
): FunctionRefusals {
  const good = args.map((arg) => arg.good);
  return {
    of,
    ranges: args.map(({ field, min, max }, i) => ({
      field,
      min,
      max,
      call: (value) => of(...good.with(i, value)),
    })),
  };
}

/** The nearest value outside a range that still shows in a sentence: a billionth of the end, or of one. */
export function justBelow(min: number): number {
  return min - 1e-9 * Math.max(1, Math.abs(min));
}

export function justAbove(max: number): number {
  return max + 1e-9 * Math.max(1, Math.abs(max));
}
