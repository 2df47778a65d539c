/** A number outside the range for which a calculation is good. Carries what a sentence for a person needs. */
export class RangeProblem extends Error {
  readonly field: string;
  readonly value: number;
  readonly unit: string;
  readonly min: number;
  readonly max: number;

  constructor(field: string, value: number, min: number, max: number, unit: string, hint?: string) {
    const spaced = unit === '' ? '' : ` ${unit}`;
    const likely = hint === undefined ? '' : ` (${hint})`;
    super(`${field} is ${String(value)}${spaced}; allowed ${rangeText(min, max)}${spaced}${likely}`);
    this.name = 'RangeProblem';
    this.field = field;
    this.value = value;
    this.unit = unit;
    this.min = min;
    this.max = max;
  }
}

/** Something that a calculation cannot take for a reason other than the size of one number (a polygon that crosses itself). */
export class InputProblem extends Error {
  readonly field: string;

  constructor(field: string, sentence: string) {
    super(`${field}: ${sentence}`);
    this.name = 'InputProblem';
    this.field = field;
  }
}

/**
 * Refuse a number that is not finite or lies outside a range; both ends are allowed.
 * @param field name of the argument, with its unit at the end (`massKg`)
 * @param unit  how the unit is written for people (`kg`); '' for a pure number
 * @param hint  the likely cause, if there is one ("was inHg meant?")
 * @throws RangeProblem naming field, value and allowed range
 */
export function requireRange(
  field: string,
  value: number,
  min: number,
  max: number,
  unit: string,
  hint?: string,
): void {
  if (!(Number.isFinite(value) && value >= min && value <= max))
    throw new RangeProblem(field, value, min, max, unit, hint);
}

function rangeText(min: number, max: number): string {
  if (max === Infinity) return `at least ${String(min)}`;
  if (min === -Infinity) return `at most ${String(max)}`;
  return `${String(min)} to ${String(max)}`;
}
