import { usualSeatArmM, withSwappedSeats } from '../alter.ts';
import { burnChoiceId, burnChoices } from '../burn-orders.ts';
import { loadFigures } from '../case-of.ts';
import type { LoadingItemRecord, LoadingRecord, StationRecord } from '../records.ts';
import type { Found } from './answer.ts';
import { isPerson, nameOf, pilotItemOf, type Subject } from './subject.ts';

/** One whole change of a loading, to be tried alone or with another: nothing in it is solved for. */
export interface Step {
  readonly found: Extract<Found, { kind: 'leave behind' | 'move' | 'swap seats' | 'tank order' }>;
  readonly apply: (copy: LoadingRecord) => void;
  /** What is carried, kg: the mass left behind or moved; nothing where people only change seats. */
  readonly handledKg: number;
  /** Whom or what it changes: two steps that share something are never tried together. */
  readonly touches: readonly string[];
}

/** Things that stay behind, things that go elsewhere, people who change seats, another order of tanks; lightest first. */
export function stepsOf(subject: Subject): Step[] {
  const { items } = subject.inputs.loading;
  const things = items.filter((item) => !isPerson(subject, item));
  return [
    ...things.map((item) => leaving(subject, item)),
    ...things.flatMap((item) => moving(subject, item)),
    ...swapping(subject),
    ...ordering(subject),
  ].sort((a, b) => a.handledKg - b.handledKg);
}

function leaving(subject: Subject, item: LoadingItemRecord): Step {
  const massKg = massOf(subject, item);
  return {
    found: { kind: 'leave behind', names: [nameOf(subject, item)], massKg, hasPerson: false },
    apply: (copy) => {
      copy.items = copy.items.filter(({ id }) => id !== item.id);
    },
    handledKg: massKg,
    touches: [item.id],
  };
}

function moving(subject: Subject, item: LoadingItemRecord): Step[] {
  const { stations } = subject.inputs.aircraft;
  const from = stations.find(({ id }) => id === item.stationId);
  if (from === undefined) return [];
  return stations
    .filter(({ id, kind }) => id !== from.id && kind !== 'seat')
    .map((to) => ({
      found: { kind: 'move', name: nameOf(subject, item), from: from.name, to: to.name, isWhole: true },
      apply: (copy) => {
        moveItem(copy, item.id, to);
      },
      handledKg: massOf(subject, item),
      touches: [item.id],
    }));
}

/** A thing to another place. */
export function moveItem(copy: LoadingRecord, itemId: string, to: Pick<StationRecord, 'id' | 'arm'>): void {
  copy.items = copy.items.map((item) =>
    item.id === itemId ? { ...item, stationId: to.id, seatArmM: usualSeatArmM(to) } : item,
  );
}

/** Of each two seats of which at least one is taken. */
function swapping(subject: Subject): Step[] {
  const { aircraft, loading } = subject.inputs;
  const seats = aircraft.stations.filter(({ kind }) => kind === 'seat');
  const pilot = pilotItemOf(subject.inputs);
  return seats.flatMap((one, i) =>
    seats.slice(i + 1).flatMap((other): Step[] => {
      const sitting = loading.items.filter(({ stationId }) => stationId === one.id || stationId === other.id);
      if (sitting.length === 0) return [];
      return [
        {
          found: {
            kind: 'swap seats',
            seats: [one.name, other.name],
            hasPilot: pilot !== null && sitting.includes(pilot),
          },
          apply: (copy) => {
            withSwappedSeats(copy, one, other);
          },
          handledKg: 0,
          touches: ['seats'],
        },
      ];
    }),
  );
}

function ordering(subject: Subject): Step[] {
  const { aircraft, loading } = subject.inputs;
  if (aircraft.tanks.length < 2) return [];
  return burnChoices(aircraft.tanks, loading.burn.everyMin)
    .filter(({ id }) => id !== burnChoiceId(loading.burn))
    .map(({ word, burn }) => ({
      found: { kind: 'tank order', words: word },
      apply: (copy) => {
        copy.burn = { ...copy.burn, ...burn };
      },
      handledKg: 0,
      touches: ['tank order'],
    }));
}

function massOf({ inputs }: Subject, item: LoadingItemRecord): number {
  const figures = loadFigures(item, inputs.people);
  return figures === null ? 0 : figures.massKg + figures.biasKg;
}
