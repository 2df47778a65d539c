interface Printed {
  /** Density or API gravity of the column. */
  readonly at: number;
  readonly factor: number;
}

/**
 * The factor that takes a volume to the standard temperature, between two columns of a printed table; rounded to four
 * decimals as the tables' own instructions want it. A published check reads its table so; the product uses equations,
 * which tests/shared-calc/fuel/weighed-volume.test.ts holds against the same example.
 * @param lower  column at or below the fuel's gravity
 * @param upper  column above it
 * @param at     the fuel's gravity, between the two
 * @returns a pure number, mostly 0.95 to 1.05
 * @source ASTM-IP petroleum measurement tables, reduction of volume to 60 degF (table 6)
 */
export function printedVolumeFactor(lower: Printed, upper: Printed, at: number): number {
  const share = (at - lower.at) / (upper.at - lower.at);
  return Math.round((lower.factor + share * (upper.factor - lower.factor)) * 1e4) / 1e4;
}
