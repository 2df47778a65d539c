import { knownMassDefaults } from '../../../shared-calc/loading/known-mass.ts';
import type { MassKnown, PersonRecord } from '../../../shared-calc/loading/records.ts';
import { todayHere } from '../../ui/dateKind.ts';

/** Somebody or something for the list, as sure as that way of knowing a mass usually is. */
export function newPerson(
  name: string,
  massKg: number,
  kind: PersonRecord['kind'],
  known: MassKnown,
): PersonRecord {
  const { sdKg, biasKg } = knownMassDefaults(known, kind);
  return {
    id: crypto.randomUUID(),
    name,
    kind,
    massKg,
    known,
    knownOn: known === 'weighed' ? todayHere() : null,
    sdKg,
    biasKg,
    note: '',
  };
}
