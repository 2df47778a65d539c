/** The parts of the fuel screen, in the order in which they are used. */
export const fuelParts = [
  { value: 'calibration', word: 'calibration' },
  { value: 'checks', word: 'checks' },
] as const;

export type FuelPart = (typeof fuelParts)[number]['value'];
