import type { SafeSide } from '../climate/safe-side.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import type { Question } from '../units/round-safely.ts';
import { shown, shownFigure } from '../units/shown.ts';

export type WeatherFigure =
  | 'densityAltitude'
  | 'temperature'
  | 'humidityShare'
  | 'headwind'
  | 'crosswind'
  | 'takeOffDistance'
  | 'runwayMargin'
  | 'climbRate';

/** The quantities that the figures are read in. */
export type FigureQuantity = 'altitude' | 'temperature' | 'speed' | 'distance' | 'climbRate';
export type FigureUnits = Pick<UnitPreferences, FigureQuantity>;

interface FigureWords {
  /** In a sentence. */
  name: string;
  quantity: FigureQuantity;
  worse: SafeSide;
  /** To which side it is rounded: the worse one. */
  question: Question;
}

/** What each figure of the weather is called, how it is shown and which way it gets worse. */
export const WEATHER_FIGURES: Readonly<Record<WeatherFigure, FigureWords>> = {
  densityAltitude: { name: 'density altitude', quantity: 'altitude', worse: 'up', question: 'load' },
  temperature: { name: 'temperature', quantity: 'temperature', worse: 'up', question: 'load' },
  humidityShare: {
    name: 'what humidity adds to density altitude',
    quantity: 'altitude',
    worse: 'up',
    question: 'load',
  },
  headwind: { name: 'headwind', quantity: 'speed', worse: 'down', question: 'available' },
  crosswind: { name: 'crosswind', quantity: 'speed', worse: 'up', question: 'load' },
  takeOffDistance: { name: 'take-off distance', quantity: 'distance', worse: 'up', question: 'needed' },
  runwayMargin: { name: 'runway left at take-off', quantity: 'distance', worse: 'down', question: 'margin' },
  climbRate: { name: 'rate of climb', quantity: 'climbRate', worse: 'down', question: 'available' },
};

/** A figure with its unit, rounded to its worse side. */
export function figureShown(valueSi: number, figure: WeatherFigure, units: FigureUnits): string {
  const { quantity, question } = WEATHER_FIGURES[figure];
  return shown(valueSi, quantity, units[quantity], question);
}

/** The same without the unit, for a column whose head names it. */
export function figureColumn(valueSi: number, figure: WeatherFigure, units: FigureUnits): string {
  const { quantity, question } = WEATHER_FIGURES[figure];
  return shownFigure(valueSi, quantity, units[quantity], question);
}

/** 'or less' where more is worse, 'or more' where less is. */
export function orBetter(figure: WeatherFigure): string {
  return WEATHER_FIGURES[figure].worse === 'up' ? 'or less' : 'or more';
}
