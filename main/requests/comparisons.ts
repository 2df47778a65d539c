import { isDeepStrictEqual } from 'node:util';
import type { AircraftRecord, FigureSource } from '../../shared-calc/loading/records.ts';

/**
 * Take back 'compared with the manual' wherever a figure differs from the one that was compared: a changed figure
 * that still carries the old day is not compared. A new day, given together with the change, stands.
 */
export function withHonestComparisons(before: AircraftRecord, after: AircraftRecord): AircraftRecord {
  const limitsOf = ({
    datumWords,
    mac,
    gear,
    maxMasses,
    leftRightMostKg,
    oil,
    groups,
    lateral,
  }: AircraftRecord) => ({
    datumWords,
    mac,
    gear,
    maxMasses,
    leftRightMostKg,
    oil,
    groups,
    lateral,
  });
  return {
    ...after,
    stations: rows(before.stations, after.stations),
    tanks: rows(before.tanks, after.tanks),
    envelopes: rows(before.envelopes, after.envelopes),
    limitsSource: honest(before.limitsSource, after.limitsSource, limitsOf(before), limitsOf(after)),
    performanceSource: honest(
      before.performanceSource,
      after.performanceSource,
      before.performance,
      after.performance,
    ),
  };
}

interface Compared {
  id: string;
  name: string;
  source: FigureSource;
}

function rows<R extends Compared>(before: readonly R[], after: readonly R[]): R[] {
  return after.map((row) => {
    const old = before.find(({ id }) => id === row.id);
    return old === undefined
      ? row
      : { ...row, source: honest(old.source, row.source, figures(old), figures(row)) };
  });
}

/** A row without its name and source: what is compared with the manual. */
function figures(row: Compared): unknown {
  return { ...row, name: null, source: null };
}

export function honest(old: FigureSource, now: FigureSource, before: unknown, after: unknown): FigureSource {
  const sameDay = now.comparedOn !== null && now.comparedOn === old.comparedOn;
  return sameDay && !isDeepStrictEqual(before, after) ? { ...now, comparedOn: null } : now;
}
