import { spreadAfterL } from '../../shared-calc/loading/spread.ts';
import { Z_95 } from '../../shared-calc/numeric/z-95.ts';
import { performanceBook, type PerformanceBook } from '../../shared-calc/performance/departure-book.ts';
import type { WindLimitsRecord } from '../../shared-calc/performance/records.ts';
import { surfaceKindOf, type SurfaceKind } from '../../shared-calc/performance/surface.ts';
import { UNIT_PRESETS } from '../../shared-calc/units/preferences.ts';
import { loadingReview } from '../../shared-calc/wording/loading-review.ts';
import { readPerformance } from '../store/performance.ts';
import { readWeighings } from '../store/weighings.ts';
import { requireAircraft } from './aircraft.ts';
import type { Context } from './define.ts';
import { loadingInputs } from './loading-review.ts';
import type { AskedRunway } from './planner-runway.ts';
import { Refusal } from './problem.ts';

type Phase = 'take-off' | 'landing';

/** A loading with its masses: as entered, and the upper figure that an aeroplane heavier than said would have. */
export interface AskedLoading {
  id: string;
  name: string;
  aircraftId: string;
  aeroplane: string;
  massKg: number | null;
  massHighKg: number | null;
  /** At the planned landing; at take-off where none is planned. */
  landingKg: number | null;
  landingHighKg: number | null;
  verdict: 'inside' | 'outside' | 'not checked';
}

/** What the aeroplane's manual answers for one loading on one runway. */
export interface AskedAeroplane {
  book: PerformanceBook;
  wind: WindLimitsRecord;
  /** The upper figure, what is left behind taken off. */
  massKg: number;
  /** Between these a load is looked for: the empty aeroplane and its largest mass for the phase. */
  leastKg: number;
  mostKg: number;
  fuelKinds: string[];
  /** null where the surface is not known: then no distance is answered. */
  surface: SurfaceKind | null;
}

/** Less than any aeroplane of the class weighs: what a table can be entered with. */
const LEAST_MASS_KG = 50;

export function askedLoading(db: Context['db'], loadingId: string): AskedLoading {
  const inputs = loadingInputs(db, loadingId);
  const { result, verdict } = loadingReview(inputs, UNIT_PRESETS.metric);
  const named = {
    id: loadingId,
    name: inputs.loading.name,
    aircraftId: inputs.aircraft.id,
    aeroplane: inputs.aircraft.name,
    verdict,
  };
  if (result === null)
    return { ...named, massKg: null, massHighKg: null, landingKg: null, landingHighKg: null };
  const after = (burnedL: number) => {
    const { massKg, massSdKg } = spreadAfterL(result.model, result.path, burnedL);
    return { massKg, highKg: massKg + Z_95 * massSdKg };
  };
  const takeOff = after(result.takeOff.burnedL);
  const landing = result.landing === null ? takeOff : after(result.landing.burnedL);
  return {
    ...named,
    massKg: takeOff.massKg,
    massHighKg: takeOff.highKg,
    landingKg: landing.massKg,
    landingHighKg: landing.highKg,
  };
}

/** The masses of a loading for one phase; null where it gives none yet. */
export function massesOf(
  loading: AskedLoading | null,
  phase: Phase,
): { massKg: number; highKg: number } | null {
  const [massKg, highKg] =
    phase === 'landing'
      ? [loading?.landingKg, loading?.landingHighKg]
      : [loading?.massKg, loading?.massHighKg];
  return massKg == null || highKg == null ? null : { massKg, highKg };
}

/** null where it has no tables, or there is no mass to enter them with. */
export function askedAeroplane(
  db: Context['db'],
  loading: AskedLoading,
  runway: AskedRunway | null,
  lighterKg: number,
  phase: Phase,
): AskedAeroplane | null {
  const { aircraftId } = loading;
  const record = readPerformance(db, aircraftId);
  const masses = massesOf(loading, phase);
  if (record === null || masses === null) return null;
  const { performance, maxMasses, tanks } = requireAircraft(db, aircraftId);
  const { bestGlideMs, bestGlideRatio } = performance;
  const emptyKg = readWeighings(db, aircraftId).find(({ withdrawn }) => !withdrawn)?.emptyMassKg;
  const leastKg = Math.max(LEAST_MASS_KG, emptyKg ?? LEAST_MASS_KG);
  if (lighterKg > 0 && masses.highKg - lighterKg < leastKg)
    throw new Refusal(
      'input-refused',
      `${String(Math.round(lighterKg * 10) / 10)} kg cannot be left behind: that would leave less than the empty aeroplane. Ask with less.`,
    );
  const mostKg = (phase === 'landing' ? maxMasses.landingKg : null) ?? maxMasses.takeOffKg ?? masses.highKg;
  return {
    book: performanceBook(record, { bestGlideMs, bestGlideRatio }),
    wind: record.wind,
    leastKg,
    mostKg: Math.max(leastKg, mostKg),
    fuelKinds: tanks.map(({ fuelKind }) => fuelKind),
    massKg: masses.highKg - lighterKg,
    surface: runway === null ? null : surfaceKindOf(runway.record.surface),
  };
}

export function answersDistance({ book, surface }: AskedAeroplane): boolean {
  return surface !== null && (book.takeOff !== null || book.seaLevel !== null);
}

export function answersLanding({ book, surface }: AskedAeroplane): boolean {
  return surface !== null && book.landing !== null;
}

/** A gradient needs the climb's speed in every row, and a runway for the wind along it. */
export function answersGradient({ book }: AskedAeroplane, runway: AskedRunway | null): boolean {
  return runway !== null && book.climb !== null && book.climb.speed !== null;
}
