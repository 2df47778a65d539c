import { requireRange } from '../../problem.ts';
import type { NumberRange } from '../../numeric/ranges-not-negative.ts';
import { usualSeatArmM, withFuelL } from '../alter.ts';
import { loadFigures, type LoadingInputs } from '../case-of.ts';
import type { LoadingItemRecord, LoadingRecord } from '../records.ts';
import type { Way } from './answer.ts';
import { fuelRanges } from './fuels.ts';
import { keptBy } from './kept.ts';
import {
  askedOf,
  isPerson,
  pilotItemOf,
  subjectOf,
  waysTo,
  type AnswerUnits,
  type Draws,
  type Subject,
} from './subject.ts';
import { sharingsOf } from './fuel-answers.ts';

/** Who may come along, and for how long. */
export interface Outing {
  /** null keeps whoever is the pilot of the loading. */
  readonly pilotId: string | null;
  /** People of the list, in the order in which they were chosen. */
  readonly passengerIds: readonly string[];
  /** Landing, seconds after take-off. */
  readonly landingAfterS: number;
}

/** One choice of passengers and what it leaves room for. */
export interface Company {
  readonly passengerIds: readonly string[];
  /** Things of the usual load that have to stay; empty where all may come. */
  readonly leftBehind: readonly string[];
  /** Fuel quantities in all tanks together, L, with which the whole flight and its reserve are inside; empty for none. */
  readonly fuelL: readonly NumberRange[];
  /** The largest quantity and, where it is another, the one for nine in ten: each with the loading that takes it. */
  readonly ways: readonly Way[];
  /** Below the maximum take-off mass with the fuel of the last way, kg; null without a way or without a maximum. */
  readonly leftKg: number | null;
}

/** With more passengers to choose from there would be more rows than anybody reads. */
const MOST_PASSENGERS = 8;
/** Things that can all be tried against each other, each with its fuel. */
const MOST_THINGS = 6;

/**
 * For each of the passengers, and for each group of them that the seats hold, the fuel that may be taken, what has to
 * stay behind, and what is left of the useful load. The loading gives pilot, usual load, order of tanks, flow and reserve.
 * @param inputs the loading that serves as the pattern; its fuel says how tanks share
 * @returns null where something has to be entered first
 * @throws RangeProblem for a landing beyond two days or more than 8 passengers; RangeProblem, InputProblem as loadingModel
 */
export function companiesFor(
  inputs: LoadingInputs,
  outing: Outing,
  units: AnswerUnits,
  draws: Draws,
): Company[] | null {
  requireRange('landingAfterS', outing.landingAfterS, 0, 172_800, 's');
  requireRange('passengerIds', outing.passengerIds.length, 0, MOST_PASSENGERS, '');
  const pattern = subjectOf(inputs, units, draws);
  if (pattern === null) return null;
  const seats = inputs.aircraft.stations.filter(({ kind }) => kind === 'seat').length;
  return groupsOf(outing.passengerIds, seats - 1).map((group) => companyOf(pattern, outing, group));
}

/** Groups by rising size, each in the order chosen. */
function groupsOf(ids: readonly string[], mostCount: number): string[][] {
  const groups: string[][] = [];
  for (let bits = 1; bits < 2 ** ids.length; bits++) {
    const group = ids.filter((_, i) => (bits & (1 << i)) !== 0);
    if (group.length <= mostCount) groups.push(group);
  }
  return groups.sort((a, b) => a.length - b.length);
}

function companyOf(pattern: Subject, outing: Outing, passengerIds: readonly string[]): Company {
  const loading = seated(pattern, outing, passengerIds);
  const things = loading.items.filter((item) => !isPerson(pattern, item)).slice(0, MOST_THINGS);
  for (const left of choicesOf(pattern, things)) {
    const after = { ...loading, items: loading.items.filter((item) => !left.includes(item)) };
    const subject = subjectOf({ ...pattern.inputs, loading: after }, pattern.units, pattern.draws);
    const [sharing] = subject === null ? [] : sharingsOf(subject);
    if (subject === null || sharing === undefined) continue;
    const ranges = fuelRanges(subject.asked, sharing.parts);
    const last = ranges.at(-1);
    if (last === undefined) continue;
    const ways = waysTo(subject, last, 'to', {
      quantity: 'volume',
      apply: (copy, litres) => {
        pattern.inputs.aircraft.tanks.forEach((tank, i) => {
          withFuelL(copy, tank, (sharing.parts[i] ?? 0) * litres);
        });
      },
    });
    if (ways.length === 0) continue;
    const leftBehind = left.map((item) => loadFigures(item, pattern.inputs.people)?.name ?? '');
    return { passengerIds, leftBehind, fuelL: ranges, ways, leftKg: leftOf(subject, ways.at(-1)) };
  }
  return { passengerIds, leftBehind: [], fuelL: [], ways: [], leftKg: null };
}

/** Nothing first, then one piece, then two; of as many, the lightest first. */
function choicesOf({ inputs }: Subject, things: readonly LoadingItemRecord[]): LoadingItemRecord[][] {
  const massKg = (item: LoadingItemRecord) => loadFigures(item, inputs.people)?.massKg ?? 0;
  const sum = (items: readonly LoadingItemRecord[]) => items.reduce((kg, item) => kg + massKg(item), 0);
  return Array.from({ length: 2 ** things.length }, (_, bits) =>
    things.filter((_item, i) => (bits & (1 << i)) !== 0),
  ).sort((a, b) => a.length - b.length || sum(a) - sum(b));
}

/** The pattern with these people in its seats: the pilot where a pilot sits, the passengers in the other seats in order. */
function seated(
  pattern: Subject,
  { pilotId, landingAfterS }: Outing,
  passengerIds: readonly string[],
): LoadingRecord {
  const { aircraft, loading } = pattern.inputs;
  const seats = aircraft.stations.filter(({ kind }) => kind === 'seat');
  const pilot = pilotItemOf(pattern.inputs);
  const pilotSeat = seats.find(({ id }) => id === pilot?.stationId) ?? seats[0];
  const others = seats.filter((seat) => seat !== pilotSeat);
  const at = (seat: (typeof seats)[number], personId: string): LoadingItemRecord => ({
    id: `${seat.id}-${personId}`,
    stationId: seat.id,
    seatArmM: usualSeatArmM(seat),
    personId,
    typed: null,
  });
  const crew =
    pilotId !== null && pilotSeat !== undefined && pilot?.personId !== pilotId
      ? [at(pilotSeat, pilotId)]
      : pilot === null
        ? []
        : [pilot];
  const passengers = others.flatMap((seat, i) => {
    const personId = passengerIds[i];
    return personId === undefined ? [] : [at(seat, personId)];
  });
  const rest = loading.items.filter(({ stationId }) => !seats.some(({ id }) => id === stationId));
  return {
    ...structuredClone(loading),
    items: [...crew, ...passengers, ...rest],
    flight: { ...loading.flight, landingAfterS },
  };
}

function leftOf(subject: Subject, way: Way | undefined): number | null {
  const mostKg = subject.inputs.aircraft.maxMasses.takeOffKg;
  const asked = way === undefined ? null : askedOf(subject, way.after);
  return mostKg === null || asked === null ? null : mostKg - keptBy(asked).result.takeOff.massKg;
}
