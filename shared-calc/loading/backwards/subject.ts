import { roundedFor } from '../../units/shown.ts';
import { toSi } from '../../units/convert.ts';
import type { UnitPreferences } from '../../units/preferences.ts';
import type { Question } from '../../units/round-safely.ts';
import type { NumberRange } from '../../numeric/ranges-not-negative.ts';
import { usualSeatArmM } from '../alter.ts';
import { caseOf, loadFigures, type LoadingInputs } from '../case-of.ts';
import type { NormalDraws } from '../odds.ts';
import type { LoadingItemRecord, LoadingRecord, StationRecord } from '../records.ts';
import type { Way } from './answer.ts';
import { keptBy, type Asked } from './kept.ts';
import { nearestSure, oddsOf } from './nine-in-ten.ts';

/** Normal draws of so many dimensions and at least so many flights: made once and kept by the caller. */
export type Draws = (dimensions: number, count: number) => NormalDraws;

export type AnswerUnits = Pick<UnitPreferences, 'mass' | 'arm' | 'volume'>;

/** What all questions about one loading of the library share. */
export interface Subject {
  readonly inputs: LoadingInputs;
  readonly asked: Asked;
  readonly units: AnswerUnits;
  readonly draws: Draws;
}

/** "And for so many the ..." */
export const SURE_PROB = 0.9;

/** So many flights say how probable an answer is, and so many are tried in looking for one. */
const SAID_COUNT = 4096;
const TRIED_COUNT = 1024;

/**
 * A loading ready to be asked about; null where something has to be entered first.
 */
export function subjectOf(inputs: LoadingInputs, units: AnswerUnits, draws: Draws): Subject | null {
  const prepared = caseOf(inputs);
  if (!prepared.ready) return null;
  const { aeroplane, loading } = prepared;
  return {
    inputs,
    asked: { aeroplane, loading, reserveS: inputs.loading.flight.reserveMin * 60 },
    units,
    draws,
  };
}

/** The subject's loading changed, as a record. */
export function changed({ inputs }: Subject, alter: (copy: LoadingRecord) => void): LoadingRecord {
  const copy = structuredClone(inputs.loading);
  alter(copy);
  return copy;
}

/** A record of this aeroplane as the calculation takes it; null where it cannot be. */
export function askedOf({ inputs, asked }: Subject, record: LoadingRecord): Asked | null {
  const prepared = caseOf({ ...inputs, loading: record });
  return prepared.ready ? { ...asked, loading: prepared.loading } : null;
}

/** A change as a way, where the whole flight is inside by it; else null. */
export function wayOf(
  subject: Subject,
  after: LoadingRecord,
  value: number | null,
  isSure = false,
): Way | null {
  const asked = askedOf(subject, after);
  if (asked === null || !keptBy(asked).all) return null;
  return { value, isSure, after, odds: oddsOf(asked, (dimensions) => subject.draws(dimensions, SAID_COUNT)) };
}

/**
 * The value at an end of a range and, where it is not sure nine times in ten, the nearest one that is; both as a person
 * reads them, rounded into the range.
 */
export function waysTo(
  subject: Subject,
  range: NumberRange,
  end: 'from' | 'to',
  of: { quantity: 'mass' | 'volume'; apply: (copy: LoadingRecord, value: number) => void },
): Way[] {
  const round = (value: number) =>
    roundedInto(subject, value, range, of.quantity, end === 'to' ? 'allowance' : 'needed');
  const at = (value: number) =>
    changed(subject, (copy) => {
      of.apply(copy, value);
    });
  const last = round(range[end]);
  const first = wayOf(subject, at(last), last);
  if (first === null) return [];
  const sure = nearestSure(
    (x) => askedOf(subject, at(x)) ?? subject.asked,
    { ...range, [end]: last },
    end,
    SURE_PROB,
    (dimensions) => subject.draws(dimensions, TRIED_COUNT),
  );
  if (sure === null || sure === last) return [sure === null ? first : { ...first, isSure: true }];
  const shown = round(sure);
  const second = shown === last ? null : wayOf(subject, at(shown), shown, true);
  return second === null ? [first] : [first, second];
}

/** A figure of the person's units that lies in the range; the exact one where none does. */
export function roundedInto(
  { units }: Subject,
  value: number,
  { from, to }: NumberRange,
  quantity: 'mass' | 'volume',
  question: Question,
): number {
  const rounded =
    quantity === 'mass'
      ? toSi(roundedFor(value, 'mass', units.mass, question), units.mass)
      : toSi(roundedFor(value, 'volume', units.volume, question), units.volume);
  return rounded >= from && rounded <= to ? rounded : value;
}

/** The seat whose occupant is never left behind or exchanged: the first one that is taken. */
export function pilotItemOf({
  aircraft,
  loading,
}: Pick<LoadingInputs, 'aircraft' | 'loading'>): LoadingItemRecord | null {
  const seats = aircraft.stations.filter(({ kind }) => kind === 'seat');
  for (const { id } of seats) {
    const item = loading.items.find(({ stationId }) => stationId === id);
    if (item !== undefined) return item;
  }
  return null;
}

export function nameOf({ inputs }: Subject, item: LoadingItemRecord): string {
  return loadFigures(item, inputs.people)?.name ?? '';
}

/** A person of the list, or whoever sits on a seat. */
export function isPerson({ inputs }: Subject, item: LoadingItemRecord): boolean {
  const person = inputs.people.find(({ id }) => id === item.personId);
  const station = inputs.aircraft.stations.find(({ id }) => id === item.stationId);
  return person === undefined ? station?.kind === 'seat' : person.kind === 'person';
}

/** A load that is typed for this loading alone, under an identifier that no other has. */
export function freshItem(
  { items }: Pick<LoadingRecord, 'items'>,
  station: Pick<StationRecord, 'id' | 'arm'>,
  typed: NonNullable<LoadingItemRecord['typed']>,
): LoadingItemRecord {
  const taken = new Set(items.map(({ id }) => id));
  let count = 1;
  while (taken.has(`${station.id}-added-${String(count)}`)) count++;
  return {
    id: `${station.id}-added-${String(count)}`,
    stationId: station.id,
    seatArmM: usualSeatArmM(station),
    personId: null,
    typed,
  };
}
