import type { Day, FigureSource } from '../loading/records.ts';
import type { TableAxis } from './performance-table.ts';
import { CAA_LEAFLET, publishedFactorRatio, type RunwayPhase } from './published-factors.ts';

/**
 * What the library keeps of an aeroplane's performance, as its manual prints it: plain data in SI units.
 * Calculations take it through departure-book.ts. null means "not printed" or "there is none".
 */
export interface PerformanceRecord {
  aircraftId: string;
  printed: PerformanceUnits;
  takeOff: DistanceTableRecord | null;
  landing: DistanceTableRecord | null;
  climb: ClimbTableRecord | null;
  /** Where the manual gives one figure for take-off and no table. Not used beside a table. */
  seaLevel: SeaLevelRecord | null;
  wind: WindLimitsRecord;
}

/** The units in which these pages of the manual print; masses are printed as elsewhere in it. */
export interface PerformanceUnits {
  altitude: 'ft' | 'm';
  temperature: 'degC' | 'degF';
  distance: 'm' | 'ft';
  climbRate: 'ft/min' | 'm/s';
  speed: 'kt' | 'mph' | 'km/h';
}

/** A place on each axis that the table has, null on the others: alike in all rows of a table. */
export type PrintedPlace = Record<TableAxis, number | null>;

export interface DistanceRow extends PrintedPlace {
  groundRollM: number | null;
  overObstacleM: number | null;
  /** A person was asked about a suspicion in this row and said that the manual prints it so. */
  asPrinted: boolean;
}

export interface DistanceTableRecord {
  /** Which page it is and what it holds for: "figure 5-4, full throttle before brake release, flaps 15". */
  words: string;
  /** Surface that the figures are printed for. */
  surface: 'paved' | 'dryGrass';
  rows: DistanceRow[];
  notes: NoteRecord[];
  /** Whether the manual's wind figures already count half of a headwind and half as much again of a tailwind. */
  windMargin: 'none' | 'included';
  /** Speed at lift-off, or over the threshold, for what is stated as a share of it. */
  speedMs: number | null;
  /** Chosen by the pilot; multiplies at the very end. */
  safety: { factorRatio: number; source: string };
  /** Standard uncertainty of a figure read from this table, as a ratio. */
  readingSdRatio: number;
  /** What has to fit on the runway. */
  against: 'overObstacle' | 'groundRoll';
  source: FigureSource;
  /** When a printed figure of it was entered or changed last; null where that was not kept yet. */
  enteredOn: Day | null;
}

export type NoteCounts =
  'headwind' | 'tailwind' | 'aboveStandard' | 'slope' | 'dryGrass' | 'wetGrass' | 'wetPaved' | 'softGround';

/** A note below the table: "decrease 10 % for each 4 kt of headwind, up to 12 kt". */
export interface NoteRecord {
  counts: NoteCounts;
  /** Per how much: m/s of wind, degree C, or slope as a ratio. null for a surface. */
  amount: number | null;
  /** As far as the manual says it holds, in the same unit; null where it says nothing. */
  mostAmount: number | null;
  /** −0.5 to 2; negative shortens, which only a headwind may. */
  changeRatio: number;
  shareOf: 'each' | 'groundRoll' | 'overObstacle';
}

export interface ClimbRow extends PrintedPlace {
  climbRateMs: number | null;
  /** Indicated airspeed of that climb. */
  speedMs: number | null;
  asPrinted: boolean;
}

export interface ClimbTableRecord {
  words: string;
  rows: ClimbRow[];
  readingSdRatio: number;
  source: FigureSource;
  enteredOn: Day | null;
}

export interface SeaLevelRecord {
  groundRollM: number;
  overObstacleM: number;
  massKg: number;
  safety: { factorRatio: number; source: string };
  readingSdRatio: number;
  source: FigureSource;
}

export interface WindLimitsRecord {
  demonstratedCrosswindMs: number | null;
  ownCrosswindMs: number | null;
  ownTailwindMs: number | null;
  source: FigureSource;
}

/** One in twenty: common practice for reading a printed table, no source. */
export const USUAL_READING_SD_RATIO = 0.05;

const NOT_COMPARED: FigureSource = { from: 'manual', comparedOn: null };

/**
 * An aeroplane of whose performance nothing is entered yet.
 * @param mass unit of the manual's masses: where they are pounds, distances are mostly printed in feet
 */
export function emptyPerformance(aircraftId: string, mass: 'kg' | 'lb' = 'kg'): PerformanceRecord {
  return {
    aircraftId,
    printed: {
      altitude: 'ft',
      temperature: 'degC',
      distance: mass === 'lb' ? 'ft' : 'm',
      climbRate: 'ft/min',
      speed: 'kt',
    },
    takeOff: null,
    landing: null,
    climb: null,
    seaLevel: null,
    wind: {
      demonstratedCrosswindMs: null,
      ownCrosswindMs: null,
      ownTailwindMs: null,
      source: { ...NOT_COMPARED },
    },
  };
}

/** A table without rows, to be filled; safety factor and spread are the usual ones until the pilot chooses others. */
export function emptyDistanceTable(phase: RunwayPhase): DistanceTableRecord {
  return {
    words: '',
    surface: 'paved',
    rows: [],
    notes: [],
    windMargin: 'none',
    speedMs: null,
    safety: { factorRatio: publishedFactorRatio('safety', phase, 1), source: CAA_LEAFLET },
    readingSdRatio: USUAL_READING_SD_RATIO,
    against: 'overObstacle',
    source: { ...NOT_COMPARED },
    enteredOn: null,
  };
}

/** The axes that a table's rows have a place on, in the order in which manuals nest them. */
export function axesOf(rows: readonly PrintedPlace[]): TableAxis[] {
  return TABLE_AXES.filter((axis) => rows.some((row) => row[axis] !== null));
}

export const TABLE_AXES: readonly TableAxis[] = ['massKg', 'pressureAltitudeM', 'temperatureC', 'headwindMs'];

export function emptyClimbTable(): ClimbTableRecord {
  return {
    words: '',
    rows: [],
    readingSdRatio: USUAL_READING_SD_RATIO,
    source: { ...NOT_COMPARED },
    enteredOn: null,
  };
}
