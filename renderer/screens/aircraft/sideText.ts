import { shown } from '../../../shared-calc/units/shown.ts';
import type { ManualUnits } from './printedUnits.ts';

/** A lateral arm in words: "4 mm to the right", "12 mm to the left". */
export function sideText(armM: number, units: Pick<ManualUnits, 'arm'>): string {
  return `${shown(Math.abs(armM), 'arm', units.arm)} to the ${armM < 0 ? 'left' : 'right'}`;
}
