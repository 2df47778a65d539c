import type { AircraftRecord } from '../../../../shared-calc/loading/records.ts';
import type { ReviewColumnRecord } from '../../../../shared-calc/loading/review-table/table-record.ts';

export const columnWords = [
  { id: 'full', word: 'full tanks' },
  { id: 'total', word: 'so much in all' },
  { id: 'tanks', word: 'so much in each tank' },
  { id: 'flight', word: 'a flight of so long' },
];

const usualFlightS = 5400;

/** A column of a kind, with figures to begin with: half of what the tanks hold, or an hour and a half. */
export function columnOfKind(
  kind: string,
  id: string,
  { tanks }: Pick<AircraftRecord, 'tanks'>,
): ReviewColumnRecord {
  const half = tanks.map((tank) => ({
    tankId: tank.id,
    litresL: Math.round((tank.capacityL - tank.unusableL) / 2),
  }));
  if (kind === 'total')
    return { id, kind: 'total', totalL: half.reduce((sum, { litresL }) => sum + litresL, 0) };
  if (kind === 'tanks') return { id, kind: 'tanks', fuel: half };
  return kind === 'flight' ? { id, kind: 'flight', flightS: usualFlightS } : { id, kind: 'full' };
}
