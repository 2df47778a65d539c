import { isaTemperatureC } from '../atmosphere/standard-atmosphere.ts';
import { POWER_LOSS_NAME, POWER_LOSS_SOURCE } from './humidity-step.ts';
import type { TableAxis } from './performance-table.ts';
import { CAA_LEAFLET, PUBLISHED_FACTORS, publishedFactorRatio } from './published-factors.ts';
import type { FactorName, RunwayPhase } from './published-factors.ts';
import type { DistanceTableRecord, NoteCounts, NoteRecord } from './records.ts';
import type { StepKind } from './runway-distances.ts';
import { surfaceFactorRatio } from './surface.ts';
import type { SurfaceKind } from './surface.ts';

/** Air and wind at one reading, after humidity and wind credit. Changed in place from reading to reading. */
export interface Conditions {
  pressureAltitudeM: number;
  temperatureC: number;
  /** Credited; negative is a tailwind. */
  headwindMs: number;
  /** 1 or more. */
  powerLossFactor: number;
  /** Set where less of a favourable thing was counted than there is. */
  isHeld: boolean;
  /** Set where a published way stood in for what the manual's table should say. */
  isEstimate: boolean;
}

/** One change of the distances that depends on the air, the wind or the runway. */
export interface DistanceRule {
  readonly counts: NoteCounts | 'humidity' | 'elevation';
  readonly kind: StepKind;
  readonly name: string;
  readonly source: string;
  readonly shareOf: NoteRecord['shareOf'];
  /** The published way around something that the manual's table should say: the distance becomes an estimate. */
  readonly isEstimate: boolean;
  /** How much of it there is, at least 0: m/s, degree C, metres, ratio; 1 for a surface. */
  amount(conditions: Conditions): number;
  /** The change as a share; Infinity where nothing is printed for so much of it. */
  changeRatio(amount: number, conditions: Conditions): number;
}

export interface RunwayConditions {
  readonly surface: SurfaceKind;
  /** Uphill in the direction of the roll is positive; as a ratio. */
  readonly slopeRatio: number;
}

/** What the rules take from a table beside its rows. */
export type TableFacts = Readonly<Pick<DistanceTableRecord, 'words' | 'surface' | 'speedMs'>> & {
  readonly notes: readonly NoteRecord[];
};

/** Shortened by more than half no figure is believed, whatever a note says. */
const MOST_SHORTENING = -0.5;

/**
 * Everything that changes a table's distances on one runway, in the order in which it is applied: humidity, elevation and
 * heat that the table has no axis for, wind, slope, surface. The manual's own note stands before a published factor.
 */
export function distanceRules(
  table: TableFacts,
  phase: RunwayPhase,
  axes: readonly TableAxis[],
  runway: RunwayConditions,
): DistanceRule[] {
  const noteOf = (counts: NoteCounts) => table.notes.find((note) => note.counts === counts);
  const rules: DistanceRule[] = [];
  if (phase === 'takeOff') rules.push(HUMIDITY);
  if (!axes.includes('pressureAltitudeM')) rules.push(publishedElevation(phase));
  if (!axes.includes('temperatureC')) {
    const note = noteOf('aboveStandard');
    rules.push(note === undefined ? publishedTemperature(phase) : noteRule(note, table, aboveStandard));
  }
  if (!axes.includes('headwindMs')) {
    const headwind = noteOf('headwind');
    // Without a note a headwind is worth nothing.
    if (headwind !== undefined)
      rules.push(noteRule(headwind, table, ({ headwindMs }) => Math.max(0, headwindMs)));
    const tailwind = noteOf('tailwind');
    const amount = ({ headwindMs }: Conditions) => Math.max(0, -headwindMs);
    rules.push(
      tailwind === undefined
        ? publishedTailwind(phase, table.speedMs, amount)
        : noteRule(tailwind, table, amount),
    );
  }
  const adverseSlope = Math.max(0, phase === 'takeOff' ? runway.slopeRatio : -runway.slopeRatio);
  const slope = noteOf('slope');
  rules.push(
    slope === undefined
      ? publishedRule('slope', phase, 'slope', () => adverseSlope)
      : noteRule(slope, table, () => adverseSlope),
  );
  rules.push(...surfaceRules(table, phase, runway.surface, noteOf));
  return rules;
}

const HUMIDITY: DistanceRule = {
  counts: 'humidity',
  kind: 'estimate',
  name: POWER_LOSS_NAME,
  source: POWER_LOSS_SOURCE,
  shareOf: 'each',
  isEstimate: false,
  amount: ({ powerLossFactor }) => powerLossFactor - 1,
  changeRatio: (amount) => amount,
};

function aboveStandard({ temperatureC, pressureAltitudeM }: Conditions): number {
  return Math.max(0, temperatureC - isaTemperatureC(pressureAltitudeM));
}

function noteRule(
  note: NoteRecord,
  table: TableFacts,
  amount: (conditions: Conditions) => number,
): DistanceRule {
  const per = note.amount ?? 1;
  const most = note.mostAmount ?? Infinity;
  return {
    counts: note.counts,
    kind: 'manualNote',
    name: NOTE_NAMES[note.counts],
    source: table.words === '' ? 'note of the manual' : `note of the manual, ${table.words}`,
    shareOf: note.shareOf,
    isEstimate: false,
    amount,
    changeRatio: (there, conditions) => {
      const perAmountRatio = note.changeRatio / per;
      if (perAmountRatio >= 0) return there > most * (1 + 1e-9) ? Infinity : there * perAmountRatio;
      const countedRatio = Math.max(Math.min(there, most) * perAmountRatio, MOST_SHORTENING);
      if (countedRatio > there * perAmountRatio + 1e-12) conditions.isHeld = true;
      return countedRatio;
    },
  };
}

function publishedRule(
  name: FactorName,
  phase: RunwayPhase,
  counts: DistanceRule['counts'],
  amount: (conditions: Conditions) => number,
  isEstimate = false,
): DistanceRule {
  const { words, step } = PUBLISHED_FACTORS[name];
  const most = step?.most ?? 1;
  return {
    counts,
    kind: 'publishedFactor',
    name: words,
    source: CAA_LEAFLET,
    shareOf: 'each',
    isEstimate,
    amount,
    changeRatio: (there) => {
      if (there > most) return Infinity;
      return there === 0 ? 0 : publishedFactorRatio(name, phase, there) - 1;
    },
  };
}

const publishedElevation = (phase: RunwayPhase) =>
  publishedRule(
    'elevation',
    phase,
    'elevation',
    ({ pressureAltitudeM }) => Math.max(0, pressureAltitudeM),
    true,
  );

const publishedTemperature = (phase: RunwayPhase) =>
  publishedRule('temperature', phase, 'aboveStandard', aboveStandard, true);

function publishedTailwind(
  phase: RunwayPhase,
  speedMs: number | null,
  amount: (conditions: Conditions) => number,
): DistanceRule {
  // Without the speed there is no share of it: any tailwind is more than the manual answers for.
  const share = (conditions: Conditions) => {
    const tailwindMs = amount(conditions);
    return tailwindMs === 0 ? 0 : speedMs === null ? Infinity : tailwindMs / speedMs;
  };
  return publishedRule('tailwind', phase, 'tailwind', share);
}

function surfaceRules(
  table: TableFacts,
  phase: RunwayPhase,
  surface: SurfaceKind,
  noteOf: (counts: NoteCounts) => NoteRecord | undefined,
): DistanceRule[] {
  if (surface === 'paved') return [];
  const counts = surface === 'gravel' ? 'dryGrass' : surface;
  const note = noteOf(counts);
  if (note !== undefined && table.surface === 'paved') return [noteRule(note, table, () => 1)];
  // The manual's own grass first, and the published step from dry to wet on top of it.
  const dry = surface === 'wetGrass' && table.surface === 'paved' ? noteOf('dryGrass') : undefined;
  const from = dry === undefined ? table.surface : 'dryGrass';
  const changeRatio = surfaceFactorRatio(surface, from, phase) - 1;
  const published: DistanceRule = {
    counts,
    kind: 'publishedFactor',
    name: SURFACE_NAMES[surface],
    source: surface === 'gravel' ? 'counted as dry grass, common practice, no source' : CAA_LEAFLET,
    shareOf: 'each',
    isEstimate: false,
    amount: () => 1,
    changeRatio: () => changeRatio,
  };
  return [
    ...(dry === undefined ? [] : [noteRule(dry, table, () => 1)]),
    ...(changeRatio > 0 ? [published] : []),
  ];
}

const NOTE_NAMES: Readonly<Record<NoteCounts, string>> = {
  headwind: 'headwind',
  tailwind: 'tailwind',
  aboveStandard: 'warmer than standard',
  slope: 'slope',
  dryGrass: 'dry grass',
  wetGrass: 'wet grass',
  wetPaved: 'wet paved surface',
  softGround: 'soft ground',
};

const SURFACE_NAMES: Readonly<Record<Exclude<SurfaceKind, 'paved'>, string>> = {
  wetPaved: 'wet paved surface',
  gravel: 'gravel',
  dryGrass: 'dry grass',
  wetGrass: 'wet grass',
  softGround: 'soft ground',
};
