import { M_PER_FT } from '../../../shared-calc/units/constants.ts';

/** The obstacle that was asked about at a field, while the program runs: what stands there is looked at anew each time. */
export class ObstacleState {
  isOpen = $state(false);
  heightM = $state<number | null>(null);
  beyondEndM = $state<number | null>(null);
  /** Common practice, no source. */
  clearanceM = $state(50 * M_PER_FT);
}
