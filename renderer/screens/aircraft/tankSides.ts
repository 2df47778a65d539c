import type { TankRecord } from '../../../shared-calc/loading/records.ts';

/** Where a tank lies, for a list to choose from. */
export const tankSides = [
  { id: 'left', word: 'left' },
  { id: 'centre', word: 'middle' },
  { id: 'right', word: 'right' },
];

export function sideOf(word: string): TankRecord['side'] {
  return word === 'left' || word === 'right' ? word : 'centre';
}
