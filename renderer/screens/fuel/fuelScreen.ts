import type { ScreenEntry } from '../../app/screens.ts';
import { fuelAnswerLine } from './fuelAnswerLine.ts';

export const fuelScreen: ScreenEntry = {
  id: 'fuel',
  word: 'Fuel',
  sheet: () => import('./FuelSheet.svelte'),
  answer: fuelAnswerLine,
};
