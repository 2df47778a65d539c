import type { Component } from 'svelte';
import type { Screen } from '../../main/requests/define.ts';
import { aircraftScreen } from '../screens/aircraft/aircraftScreen.ts';
import { fuelScreen } from '../screens/fuel/fuelScreen.ts';
import { loadingScreen } from '../screens/loading/loadingScreen.ts';
import { weatherScreen } from '../screens/weather/weatherScreen.ts';
import type { App } from './app.svelte.ts';

/** A screen that works: listed in the index in this order. */
export interface ScreenEntry {
  id: Screen;
  word: string;
  /** Reads the screen's sheet, a part of the built window of its own: see sheets.svelte.ts. */
  sheet: () => Promise<{ default: Component }>;
  /**
   * The screen's own answer of today, a few words under its name in the index ('inside by 11 mm').
   * Called once while the index is built, so it may hold queries; the function that it returns is read on every change.
   */
  answer: (app: App) => () => string;
}

export const screens: readonly ScreenEntry[] = [aircraftScreen, loadingScreen, fuelScreen, weatherScreen];
