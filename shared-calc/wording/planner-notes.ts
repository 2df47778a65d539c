import type { PlannerUnits } from './planner.ts';
import { Z_95 } from '../numeric/z-95.ts';
import { shown } from '../units/shown.ts';

/** What a plan rests on and what it leaves out. */
export interface PlannerNoteParts {
  readonly loading: {
    readonly name: string;
    readonly aeroplane: string;
    readonly massKg: number | null;
    readonly massHighKg: number | null;
    readonly landingHighKg: number | null;
    readonly verdict: 'inside' | 'outside' | 'not checked';
  } | null;
  readonly lighterKg: number;
  readonly runway: {
    readonly surface: string;
    /** Names of its two ends. */
    readonly idents: readonly string[];
    /** Uphill from the first end; null where not known. */
    readonly slopeRatio: number | null;
    /** The same from each end in use. */
    readonly slopes: readonly number[] | null;
  } | null;
  readonly isSurfaceKnown: boolean;
  /** What the manual has. */
  readonly table: 'table' | 'estimate' | 'none';
  readonly isLanding: boolean;
  /** The figures were held against the manual, or are not from it. */
  readonly isCompared: boolean;
  readonly hasClimb: boolean;
  /** What counts an adverse slope: the manual's own note, or the published factor in its place. */
  readonly slopeCounted: 'note' | 'published';
  readonly safetyRatio: number | null;
  readonly readingSdRatio: number;
  readonly takeOffAsked: boolean;
  /** Words of the placard for the fuel of the tanks in use: 'unleaded 95', 'avgas 100LL'. */
  readonly fuelKinds: readonly string[];
  /** The hottest nine-in-ten temperature inside the windows; null where there is none. */
  readonly hottestC: number | null;
  readonly isFlightAssumed: boolean;
  readonly units: PlannerUnits;
}

/** Warm enough to ask after vapour in the fuel lines: common practice, no source. */
const VAPOUR_FROM_C = 25;

/**
 * The lines under an answer: the weightiest first. A loading outside its limits, what is missing for a take-off
 * distance, how doubt is counted, and the prompt about motor fuel at a hot field.
 */
export function plannerNotes(parts: PlannerNoteParts): string[] {
  const { loading, units } = parts;
  const notes: string[] = [];
  if (loading?.verdict === 'outside')
    notes.push(`${loading.name} is outside its limits: do not depart loaded like this. See Loading.`);
  notes.push(...missing(parts));
  if (parts.takeOffAsked && !parts.isCompared)
    notes.push(
      `Do not rely on this yet: the ${parts.isLanding ? 'landing' : 'take-off'} table has not been compared with the manual. See Aircraft.`,
    );
  if (parts.takeOffAsked && loading?.massHighKg != null) {
    const highKg = parts.isLanding ? (loading.landingHighKg ?? loading.massHighKg) : loading.massHighKg;
    const massKg = highKg - parts.lighterKg;
    const factor =
      parts.safetyRatio === null ? '' : `; with the safety factor of ${parts.safetyRatio.toFixed(2)}`;
    notes.push(
      `Worked with the upper figures of the mass, ${shown(massKg, 'mass', units.mass, 'load')}, and of reading the table, ${shown(Z_95 * parts.readingSdRatio, 'share', '%', 'doubt')} more, which hold 95 times in 100${factor}.`,
    );
    if (parts.table === 'estimate')
      notes.push(
        'The take-off distance is an estimate from one sea-level figure, not a table of the manual.',
      );
  }
  if (parts.takeOffAsked && parts.runway !== null) notes.push(slopeNote(parts, parts.runway));
  if (parts.isFlightAssumed) notes.push('No landing is planned in Loading: one hour of flight is assumed.');
  if (parts.isLanding)
    notes.push(
      'The take-off before it is taken to have the same daylight; the place of departure may differ.',
    );
  const motorFuel = parts.fuelKinds.find((kind) => !/avgas|100 ?ll|91 ?ul/i.test(kind));
  if (motorFuel !== undefined && parts.hottestC !== null && parts.hottestC >= VAPOUR_FROM_C)
    notes.push(
      `Motor fuel (${motorFuel}) at ${shown(parts.hottestC, 'temperature', units.temperature, 'load')}: watch for vapour in the lines. Park in the shade or nose to wind, do not heat-soak after a stop, check fuel pressure and full power before the take-off. The manual decides.`,
    );
  return notes;
}

/** A slope only ever lengthens: what it would give is not counted. */
function slopeNote(
  { isLanding, slopeCounted }: PlannerNoteParts,
  { idents, slopeRatio, slopes }: NonNullable<PlannerNoteParts['runway']>,
): string {
  if (slopeRatio === null || slopes === null)
    return 'The slope of the runway is not known and not counted: uphill a take-off needs more, downhill a landing.';
  if (slopeRatio === 0) return 'The runway is entered as level.';
  const up = shown(Math.abs(slopeRatio), 'gradient', '%', 'load');
  const [low, high] = slopeRatio > 0 ? idents : idents.toReversed();
  const where = `The runway rises ${up} from ${low ?? ''} to ${high ?? ''}`;
  const against = isLanding ? 'a landing downhill' : 'a take-off uphill';
  const isCounted = slopes.some((each) => (isLanding ? each < 0 : each > 0));
  if (!isCounted)
    return `${where}: what it gives ${isLanding ? 'a landing uphill' : 'a take-off downhill'} is not counted.`;
  return slopeCounted === 'note'
    ? `${where}: ${against} is counted by the manual’s note; what the other way gives is not counted.`
    : `${where}: the manual’s notes say nothing of slope, so ${against} is lengthened by a published factor, 10 % for each 2 %; what the other way gives is not counted.`;
}

function missing(parts: PlannerNoteParts): string[] {
  const { loading } = parts;
  if (loading === null) return ['Without a loading there is no take-off distance in this answer.'];
  if (loading.massKg === null)
    return [`${loading.name} gives no take-off mass yet: no take-off distance in this answer.`];
  if (parts.runway === null) return ['Without a runway there is no take-off distance in this answer.'];
  if (parts.table === 'none')
    return [
      `${loading.aeroplane} has no take-off table: the answer rests on density altitude${parts.hasClimb ? ' and climb' : ''} alone. Enter the table in Aircraft.`,
    ];
  if (!parts.isSurfaceKnown)
    return [
      `The surface '${parts.runway.surface}' is not known: no take-off distance in this answer. Write it as asphalt, gravel or grass.`,
    ];
  if (!parts.hasClimb && !parts.isLanding)
    return [
      `${loading.aeroplane} has no climb table: no climb can be asked in this answer. Enter it in Aircraft.`,
    ];
  return [];
}
