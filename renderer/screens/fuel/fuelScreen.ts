import type { ScreenEntry } from '../../app/screens.ts';
import { fuelAnswerLine } from './fuelAnswerLine.ts';
import FuelSheet from './FuelSheet.svelte';

export const fuelScreen: ScreenEntry = { id: 'fuel', word: 'Fuel', sheet: FuelSheet, answer: fuelAnswerLine };
