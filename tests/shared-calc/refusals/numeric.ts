import { quadraticRootsBetween } from '../../../shared-calc/numeric/quadratic.ts';
import type { RoomRefusals } from './table.ts';

export const refusals: RoomRefusals = {
  functions: [],
  takeNoNumber: [
    [quadraticRootsBetween, 'coefficients of any size are good; without a real root it gives none'],
  ],
};
