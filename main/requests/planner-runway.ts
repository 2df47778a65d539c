import { availableLengthM } from '../../shared-calc/performance/departure-figures.ts';
import type { RunwayCase } from '../../shared-calc/performance/distance-reader.ts';
import type { SurfaceKind } from '../../shared-calc/performance/surface.ts';
import type { FieldRecord, RunwayRecord } from '../store/fields.ts';
import type { PlannerQuestion } from './planner-schema.ts';

/** A runway with the end, or both ends, from which it is used. */
export interface AskedRunway {
  record: RunwayRecord;
  end: 'first' | 'second' | 'into the wind';
}

/** The runway chosen, else the longest; null where none is wanted, or the field has none. */
export function askedRunway(field: FieldRecord, question: PlannerQuestion): AskedRunway | null {
  if (question.runwayId === null) return null;
  const longest = field.runways.reduce<RunwayRecord | null>(
    (found, runway) => (found === null || runway.lengthM > found.lengthM ? runway : found),
    null,
  );
  const record = field.runways.find(({ id }) => id === question.runwayId) ?? longest;
  return record === null ? null : { record, end: question.end ?? 'into the wind' };
}

/** Places of the ends that may be used: both where it is into the wind. */
function endsOf({ end }: AskedRunway): (0 | 1)[] {
  return end === 'first' ? [0] : end === 'second' ? [1] : [0, 1];
}

/** True headings of the take-off, in step with `runwayCases`. */
export function headingsOf(runway: AskedRunway | null): number[] {
  return runway === null ? [] : endsOf(runway).map((end) => runway.record.ends[end].trueHeadingDeg);
}

/** Into the wind either end may be used: the shorter one counts. */
export function availableM(runway: AskedRunway, phase: 'take-off' | 'landing'): number {
  const { record } = runway;
  return Math.min(
    ...endsOf(runway).map((end) =>
      availableLengthM(
        phase === 'landing' ? 'landing' : 'takeOff',
        record.lengthM,
        record.ends[end].displacedThresholdM,
      ),
    ),
  );
}

/** Uphill of a roll from each end that may be used; null where the runway's slope is not known. */
export function slopesOf(runway: AskedRunway): number[] | null {
  const { slopeRatio } = runway.record;
  return slopeRatio === null ? null : endsOf(runway).map((end) => (end === 0 ? slopeRatio : -slopeRatio));
}

/** The runway from each end that may be used, as a distance is read for it; a slope that is not known is not counted. */
export function runwayCases(
  runway: AskedRunway,
  phase: 'take-off' | 'landing',
  surface: SurfaceKind,
): RunwayCase[] {
  const lengthM = availableM(runway, phase);
  const slopes = slopesOf(runway);
  return endsOf(runway).map((_, at) => ({ surface, availableM: lengthM, slopeRatio: slopes?.[at] ?? 0 }));
}

/** "06 or 24, into the wind"; "24". */
export function runwayWords({ record, end }: AskedRunway): string {
  const [first, second] = record.ends;
  if (end === 'first') return first.ident;
  if (end === 'second') return second.ident;
  return `${first.ident} or ${second.ident}, into the wind`;
}
