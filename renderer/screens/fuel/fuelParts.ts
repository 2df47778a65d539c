/** The parts of the fuel screen, in the order in which they are used. */
export const fuelParts = [
  { value: 'calibration', word: 'calibration' },
  { value: 'checks', word: 'checks' },
  { value: 'dipstick', word: 'dipstick' },
] as const;

export type FuelPart = (typeof fuelParts)[number]['value'];
