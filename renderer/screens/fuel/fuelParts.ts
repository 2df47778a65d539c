/** The parts of the fuel screen: making the curve, using it, how it has held since, and the other way of measuring. */
export const fuelParts = [
  { value: 'calibration', word: 'fill test' },
  { value: 'flight', word: 'for a flight' },
  { value: 'checks', word: 'checks' },
  { value: 'dipstick', word: 'dipstick' },
] as const;

export type FuelPart = (typeof fuelParts)[number]['value'];
