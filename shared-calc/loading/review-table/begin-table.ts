import { usualSeatArmM } from '../alter.ts';
import { listWords } from '../../wording/list-words.ts';
import type { AircraftRecord, LoadingRecord, PersonRecord } from '../records.ts';
import type { ReviewColumnRecord, ReviewRowRecord, ReviewTableRecord, ReviewTerms } from './table-record.ts';

/** Fuel columns of a first table, the full one besides. */
const STEPS = 4;
/** More rows than this are added by hand. */
const MOST_ROWS = 12;

/**
 * A first table: a row for each loading there is, or, where there is none, for the first person alone and with each of the
 * others; columns from little fuel to full. Order of tanks, flow and reserve are those of the pattern.
 * @param pattern the loading whose terms all cells share
 * @param newId   a new identifier each time
 */
export function beginTable(
  aircraft: AircraftRecord,
  loadings: readonly LoadingRecord[],
  people: readonly PersonRecord[],
  pattern: Omit<LoadingRecord, 'id'>,
  newId: () => string,
): ReviewTableRecord {
  const rows = loadings.slice(0, MOST_ROWS).map((loading) => rowOf(loading, newId));
  return {
    aircraftId: aircraft.id,
    terms: termsOf(pattern),
    split: 'even',
    fuelDoubtL: doubtOf(pattern),
    rows: rows.length > 0 ? rows : companies(aircraft, people, newId),
    columns: firstColumns(aircraft, newId),
  };
}

/** What all cells take from a loading. */
export function termsOf({ category, burn, flight }: Omit<LoadingRecord, 'id'>): ReviewTerms {
  const { taxiL, climbL, climbMin, cruiseLPerH, reserveMin } = flight;
  return { category, burn, flight: { taxiL, climbL, climbMin, cruiseLPerH, reserveMin } };
}

/** The widest doubt about a tank; litres at the ends of a tank have less. */
export function doubtOf({ fuel }: Pick<LoadingRecord, 'fuel'>): number {
  return fuel.reduce((most, { lowL, highL, bestL }) => Math.max(most, bestL - lowL, highL - bestL), 0);
}

/** A row with the people and things of a loading, at their places. */
export function rowOf(
  { name, items }: Pick<LoadingRecord, 'name' | 'items'>,
  newId: () => string,
): ReviewRowRecord {
  return { id: newId(), name, items: structuredClone(items) };
}

/** A row with people in the seats in the order given, named by them. */
export function seatedRow(
  aircraft: Pick<AircraftRecord, 'stations'>,
  seated: readonly Pick<PersonRecord, 'id' | 'name'>[],
  newId: () => string,
): ReviewRowRecord {
  const seats = aircraft.stations.filter(({ kind }) => kind === 'seat');
  const items = seats.flatMap((seat, i) => {
    const person = seated[i];
    if (person === undefined) return [];
    return [
      { id: newId(), stationId: seat.id, seatArmM: usualSeatArmM(seat), personId: person.id, typed: null },
    ];
  });
  const names = seated.slice(0, seats.length).map(({ name }) => name);
  const [only] = names;
  return { id: newId(), name: names.length === 1 ? `${only ?? ''} alone` : listWords(names), items };
}

function companies(
  aircraft: AircraftRecord,
  people: readonly PersonRecord[],
  newId: () => string,
): ReviewRowRecord[] {
  const persons = people.filter(({ kind }) => kind === 'person');
  const [pilot, ...others] = persons;
  if (pilot === undefined) return [];
  const seats = aircraft.stations.filter(({ kind }) => kind === 'seat').length;
  const pairs = seats < 2 ? [] : others.map((other) => [pilot, other]);
  return [[pilot], ...pairs].slice(0, MOST_ROWS).map((seated) => seatedRow(aircraft, seated, newId));
}

/** Steps of 5, 10 or 20 L (or so) up to full tanks; none without tanks. */
function firstColumns({ tanks }: AircraftRecord, newId: () => string): ReviewColumnRecord[] {
  const usableL = tanks.reduce((sum, tank) => sum + tank.capacityL - tank.unusableL, 0);
  if (usableL === 0) return [{ id: newId(), kind: 'full' }];
  const roughL = usableL / (STEPS + 1);
  const tenL = 10 ** Math.floor(Math.log10(roughL));
  const stepL = [1, 2, 5, 10].map((n) => n * tenL).find((n) => n >= roughL * 0.999) ?? roughL;
  const totals = Array.from({ length: STEPS }, (_, i) => stepL * (i + 1)).filter((l) => l < usableL * 0.98);
  return [
    ...totals.map((totalL): ReviewColumnRecord => ({ id: newId(), kind: 'total', totalL })),
    { id: newId(), kind: 'full' },
  ];
}
