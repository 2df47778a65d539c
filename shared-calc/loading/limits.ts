import type { EnvelopeBands, Side } from './envelope.ts';
import type { Phase } from './aeroplane.ts';
import type { LoadingModel } from './model.ts';

/** A limit that a loading has to keep. */
export type Limit =
  /** Forward and aft limit of an envelope; `until` says in which part of the flight. */
  | {
      readonly kind: 'forward' | 'aft';
      readonly id: string;
      readonly phase: Phase;
      readonly envelope: EnvelopeBands;
    }
  /** A maximum mass, by the manual's figure or the top of an envelope. */
  | { readonly kind: 'most'; readonly id: string; readonly phase: Phase; readonly limitKg: number }
  /**
   * The lowest mass that an envelope covers. Where the manual states it as a least mass it is a limit with a margin like
   * any other. Else (isStated false) nothing can be said below it: a flight that goes there is not inside, but how far it
   * stays from there is no margin, and no chance of going there enters the odds.
   */
  | {
      readonly kind: 'least';
      readonly id: string;
      readonly phase: Phase;
      readonly limitKg: number;
      readonly isStated: boolean;
    }
  | {
      readonly kind: 'station-most' | 'station-least' | 'group-most';
      readonly id: string;
      readonly name: string;
      readonly limitKg: number;
      readonly loadedKg: number;
    }
  | { readonly kind: 'left-right'; readonly id: string; readonly limitKg: number }
  /** How far the CG may lie to a side, from take-off until usable fuel is exhausted; the limiting moment over mass. */
  | { readonly kind: 'left' | 'right'; readonly id: string; readonly side: Side; readonly widthM: number };

export type EnvelopeLimit = Extract<Limit, { kind: 'forward' | 'aft' }>;
export type LateralLimit = Extract<Limit, { kind: 'left' | 'right' }>;
export type MassLimit = Extract<Limit, { kind: 'most' | 'least' }>;
export type PlaceLimit = Extract<Limit, { loadedKg: number }>;

/**
 * Every limit that holds for a loading, each once.
 *
 * An envelope for take-off serves for the flight where the manual prints none for the flight: the safe side. The top
 * of an envelope that equals the maximum mass of its phase is that limit, not a second one.
 */
export function limitsOf(model: LoadingModel): Limit[] {
  const { aeroplane, envelopes } = model;
  const limits: Limit[] = [];
  const most = massLimits(model);
  const hasFlight = envelopes.some((e) => e.phase === 'flight');
  for (const envelope of envelopes) {
    const phase = envelope.phase === 'take-off' && !hasFlight ? 'flight' : envelope.phase;
    const id = `envelope.${envelope.id}`;
    limits.push({ kind: 'forward', id: `${id}.forward`, phase, envelope });
    limits.push({ kind: 'aft', id: `${id}.aft`, phase, envelope });
    limits.push({
      kind: 'least',
      id: `${id}.least`,
      phase,
      limitKg: envelope.lowestKg,
      isStated: envelope.lowestIsLimit,
    });
    const limitKg = envelope.highestKg;
    // Mass falls from take-off on: a flight's heaviest point is the take-off.
    const heaviest = phase === 'flight' ? 'take-off' : phase;
    const known = most.some((m) => m.phase === heaviest && Math.abs(m.limitKg - limitKg) <= 1e-9 * limitKg);
    if (!known) limits.push({ kind: 'most', id: `${id}.most`, phase, limitKg });
  }
  limits.push(...most);
  for (const station of aeroplane.stations) {
    const loadedKg = loadOf(model, [station.id]);
    const { id, name, mostKg, leastKg } = station;
    if (mostKg !== null) {
      limits.push({ kind: 'station-most', id: `station.${id}.most`, name, limitKg: mostKg, loadedKg });
    }
    if (leastKg !== null) {
      limits.push({ kind: 'station-least', id: `station.${id}.least`, name, limitKg: leastKg, loadedKg });
    }
  }
  for (const { id, name, mostKg, stationIds, emptyPartKg } of aeroplane.groups) {
    const loadedKg = emptyPartKg + loadOf(model, stationIds);
    limits.push({ kind: 'group-most', id: `group.${id}`, name, limitKg: mostKg, loadedKg });
  }
  if (aeroplane.leftRightMostKg !== null) {
    limits.push({ kind: 'left-right', id: 'leftRight', limitKg: aeroplane.leftRightMostKg });
  }
  if (model.lateral !== null) {
    const { left, right, widthM } = model.lateral;
    if (left !== null) limits.push({ kind: 'left', id: 'lateral.left', side: left, widthM });
    if (right !== null) limits.push({ kind: 'right', id: 'lateral.right', side: right, widthM });
  }
  return limits;
}

function massLimits({ aeroplane: { maxMasses } }: LoadingModel): MassLimit[] {
  const given: [Phase, number | null][] = [
    ['ramp', maxMasses.rampKg],
    ['take-off', maxMasses.takeOffKg],
    ['landing', maxMasses.landingKg],
    ['zero-fuel', maxMasses.zeroFuelKg],
  ];
  return given.flatMap(([phase, limitKg]) =>
    limitKg === null ? [] : [{ kind: 'most' as const, id: `maxMass.${phase}`, phase, limitKg }],
  );
}

function loadOf(model: LoadingModel, stationIds: readonly string[]): number {
  return model.solids.reduce(
    (sum, item) => (item.stationId !== null && stationIds.includes(item.stationId) ? sum + item.massKg : sum),
    0,
  );
}

/** Whether how far a flight stays from a limit is a margin: all but the lowest mass at which the manual's figures end. */
export function hasMargin(limit: Limit): boolean {
  return limit.kind !== 'least' || limit.isStated;
}

/** Whether a limit is one of the CG, whose margin is in m of arm; every other margin is in kg. */
export function isOfCg(limit: Limit): limit is EnvelopeLimit | LateralLimit {
  return 'envelope' in limit || 'side' in limit;
}

/** Largest mass in sight, kg: the measure of "met exactly" for masses. */
export function largestMassKg(model: LoadingModel): number {
  let largest = model.solidKg;
  for (const limit of limitsOf(model)) if (limit.kind === 'most') largest = Math.max(largest, limit.limitKg);
  return largest;
}
