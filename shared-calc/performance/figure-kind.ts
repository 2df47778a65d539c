import type { DistanceRule } from './distance-rules.ts';
import type { TableAxis } from './performance-table.ts';

/** What a figure is worth as evidence. */
export type AnsweredKind =
  /** From the manual's table, between its printed cells. */
  | 'table'
  /** Colder, lower, lighter or more headwind than printed: the edge's figure, no better than. */
  | 'edge'
  | 'estimate';

/** Why there is no figure. In a plan each of them is a limit not met; only `missingAir` is no observation at all. */
export type RefusedKind =
  | 'heavier'
  | 'higher'
  | 'hotter'
  | 'moreTailwind'
  | 'blankCell'
  /** Neither the manual nor a published factor says what to do (a slope beyond the factors). */
  | 'noRule'
  /** Nothing was entered to answer from. */
  | 'noTable'
  /** By the estimate from one figure it would not climb over the obstacle. */
  | 'wouldNotClimb'
  /** Pressure, temperature or wind is not known, or no such air exists. */
  | 'missingAir';

export type FigureKind = AnsweredKind | RefusedKind;

export function isAnswered(kind: FigureKind): kind is AnsweredKind {
  return kind === 'table' || kind === 'edge' || kind === 'estimate';
}

/** @param axis on which the place lies beyond the table; null where a blank cell was met */
export function beyondKind(axis: TableAxis | null): RefusedKind {
  return axis === null ? 'blankCell' : BEYOND[axis];
}

export function ruleRefusal(counts: DistanceRule['counts']): RefusedKind {
  switch (counts) {
    case 'tailwind':
      return 'moreTailwind';
    case 'elevation':
      return 'higher';
    case 'aboveStandard':
    case 'humidity':
      return 'hotter';
    default:
      return 'noRule';
  }
}

const BEYOND: Readonly<Record<TableAxis, RefusedKind>> = {
  massKg: 'heavier',
  pressureAltitudeM: 'higher',
  temperatureC: 'hotter',
  headwindMs: 'moreTailwind',
};
