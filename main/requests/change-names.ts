import { isDeepStrictEqual } from 'node:util';
import type { AircraftRecord, LoadingRecord } from '../../shared-calc/loading/records.ts';

/** What undo calls a change of an aeroplane when the caller gave no name: the one part that differs, or all of it. */
export function aircraftChangeName(before: AircraftRecord, after: AircraftRecord): string {
  const parts = [
    ...rowNames(before.stations, after.stations),
    ...rowNames(before.tanks, after.tanks),
    ...rowNames(before.groups, after.groups),
    ...rowNames(before.envelopes, after.envelopes),
  ];
  const others = (
    [
      ['name', 'name'],
      ['identification', 'identification'],
      ['datumWords', 'datum'],
      ['mac', 'MAC'],
      ['gear', 'wheels'],
      ['maxMasses', 'maximum masses'],
      ['performance', 'performance figures'],
      ['printed', 'units of the manual'],
      ['oil', 'oil'],
      ['lateral', 'lateral limits'],
    ] as const
  ).flatMap(([key, words]) => (isDeepStrictEqual(before[key], after[key]) ? [] : [words]));
  const all = [...parts, ...others];
  return all.length === 1 && all[0] !== undefined ? `${all[0]} of ${after.name}` : `figures of ${after.name}`;
}

/** The same for a loading. */
export function loadingChangeName(before: LoadingRecord, after: LoadingRecord): string {
  if (before.name !== after.name) return `${before.name} renamed to ${after.name}`;
  const others = (
    [
      ['items', 'people and things'],
      ['fuel', 'fuel'],
      ['burn', 'order of tanks'],
      ['flight', 'flight'],
      ['category', 'category'],
    ] as const
  ).flatMap(([key, words]) => (isDeepStrictEqual(before[key], after[key]) ? [] : [words]));
  return `${others.length === 1 && others[0] !== undefined ? others[0] : 'figures'} of ${after.name}`;
}

function rowNames(
  before: readonly { id: string; name: string }[],
  after: readonly { id: string; name: string }[],
): string[] {
  const old = new Map(before.map((row) => [row.id, row]));
  const kept = new Set(after.map((row) => row.id));
  return [
    ...after.flatMap((row) => (isDeepStrictEqual(old.get(row.id), row) ? [] : [row.name])),
    ...before.flatMap((row) => (kept.has(row.id) ? [] : [row.name])),
  ];
}
