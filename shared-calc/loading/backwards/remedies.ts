import { usualSeatArmM, withMassKg } from '../alter.ts';
import { burnChoices } from '../burn-orders.ts';
import { loadFigures } from '../case-of.ts';
import type { LoadingItemRecord, LoadingRecord, StationRecord } from '../records.ts';
import type { Answer, Way } from './answer.ts';
import { ballastAt } from './ballast.ts';
import { fuelRemedies } from './fuel-answers.ts';
import { keptBy } from './kept.ts';
import { landingRanges } from './landings.ts';
import { leaveBehind, type LeftBehind } from './leave-behind.ts';
import { loadRanges } from './loads.ts';
import { moveRanges } from './moves.ts';
import { moveItem, stepsOf } from './steps.ts';
import {
  askedOf,
  changed,
  freshItem,
  isPerson,
  nameOf,
  pilotItemOf,
  waysTo,
  wayOf,
  type Subject,
} from './subject.ts';
import { twoChanges } from './two-changes.ts';

/** So many moves and places of ballast are offered. */
const MOST_OFFERED = 2;
/** Moves of which the least part is solved for. */
const MOST_SOLVED = 24;
/** Pieces that can all be tried against each other. */
const MOST_PIECES = 14;

/** With so many single changes that keep everybody aboard, two together are not looked for. */
const ENOUGH = 3;

/**
 * What brings a loading inside that is not. First the single changes: what to leave behind, to move, whom to swap, what to
 * take as fuel, as ballast, in which order to burn, when to land, how heavy a passenger may be. Then two changes together,
 * unless there is choice enough without asking somebody to stay or to be lighter. Empty where neither does.
 */
export function remediesFor(subject: Subject): Answer[] {
  const single = [
    ...leavingRemedies(subject),
    ...moveRemedies(subject),
    ...swapRemedies(subject),
    ...fuelRemedies(subject),
    ...orderRemedies(subject),
    ...landingRemedies(subject),
    ...loadRemedies(subject),
    ...ballastRemedies(subject),
  ];
  return single.filter(keepsAllAboard).length >= ENOUGH ? single : [...single, ...twoChanges(subject)];
}

function keepsAllAboard({ found }: Answer): boolean {
  if (found.kind === 'leave behind') return !found.hasPerson;
  return found.kind !== 'largest load' && found.kind !== 'least load';
}

function swapRemedies(subject: Subject): Answer[] {
  return stepsOf(subject).flatMap(({ found, apply }): Answer[] => {
    const way = found.kind === 'swap seats' ? wayOf(subject, changed(subject, apply), null) : null;
    return way === null ? [] : [{ found, ways: [way] }];
  });
}

function leavingRemedies(subject: Subject): Answer[] {
  const { items } = subject.inputs.loading;
  const pilot = pilotItemOf(subject.inputs);
  const pieces = items.flatMap((item, i) => (item === pilot ? [] : [i])).slice(0, MOST_PIECES);
  const things = pieces.filter((i) => {
    const item = items[i];
    return item !== undefined && !isPerson(subject, item);
  });
  // A passenger stays behind only where leaving things does not do.
  const ofThings = leaveBehind(subject.asked, things);
  const { fewest, lightest } = ofThings.fewest === null ? leaveBehind(subject.asked, pieces) : ofThings;
  const choices = [fewest, ...(lightest === fewest ? [] : [lightest])];
  return choices.flatMap((left) =>
    left === null || left.indexes.length === 0 ? [] : leftAnswer(subject, left),
  );
}

function leftAnswer(subject: Subject, { indexes, massKg }: LeftBehind): Answer[] {
  const { items } = subject.inputs.loading;
  const gone = items.filter((_, i) => indexes.includes(i));
  const after = changed(subject, (copy) => {
    copy.items = copy.items.filter((_, i) => !indexes.includes(i));
  });
  const way = wayOf(subject, after, null);
  const names = gone.map((item) => nameOf(subject, item));
  return way === null
    ? []
    : [
        {
          found: {
            kind: 'leave behind',
            names,
            massKg,
            hasPerson: gone.some((item) => isPerson(subject, item)),
          },
          ways: [way],
        },
      ];
}

/** A thing and the place to which it may go. */
interface Move {
  readonly item: LoadingItemRecord;
  readonly index: number;
  readonly from: StationRecord;
  readonly to: StationRecord;
}

/** Whole things first, those that leave most margin; then the least part of one that will do. */
function moveRemedies(subject: Subject): Answer[] {
  const { items } = subject.inputs.loading;
  const { stations } = subject.inputs.aircraft;
  const places = stations.filter(({ kind }) => kind !== 'seat');
  const moves = items.flatMap((item, index): Move[] => {
    const from = stations.find(({ id }) => id === item.stationId);
    if (from === undefined || isPerson(subject, item)) return [];
    return places.flatMap((to) => (to.id === from.id ? [] : [{ item, index, from, to }]));
  });
  const whole = moves.flatMap((move) => wholeMove(subject, move));
  // Where whole things do, parts of others need not be solved for.
  const parts = (whole.length > 0 ? whole.map(({ move }) => move) : moves.slice(0, MOST_SOLVED)).flatMap(
    (move) => partMove(subject, move),
  );
  return [
    ...whole.sort((a, b) => b.share - a.share).slice(0, MOST_OFFERED),
    ...parts.sort((a, b) => a.leastKg - b.leastKg).slice(0, whole.length > 0 ? 1 : MOST_OFFERED),
  ].map(({ answer }) => answer);
}

function wholeMove(subject: Subject, move: Move): { move: Move; answer: Answer; share: number }[] {
  const { item, from, to } = move;
  const after = changed(subject, (copy) => {
    moveItem(copy, item.id, to);
  });
  const asked = askedOf(subject, after);
  const way = wayOf(subject, after, null);
  if (asked === null || way === null) return [];
  const found = {
    kind: 'move' as const,
    name: nameOf(subject, item),
    from: from.name,
    to: to.name,
    isWhole: true,
  };
  return [{ move, answer: { found, ways: [way] }, share: keptBy(asked).flightShare }];
}

/** The least part that will do; nothing where it takes all of the thing. */
function partMove(subject: Subject, { item, index, from, to }: Move): { answer: Answer; leastKg: number }[] {
  const [first] = moveRanges(subject.asked, index, { stationId: to.id, armM: usualSeatArmM(to) });
  const all = subject.asked.loading.loads[index]?.massKg ?? 0;
  if (first === undefined || first.from >= all) return [];
  const ways = waysTo(subject, first, 'from', {
    quantity: 'mass',
    apply: (copy, massKg) => {
      movePart(subject, copy, item, to, massKg);
    },
  });
  const found = {
    kind: 'move' as const,
    name: nameOf(subject, item),
    from: from.name,
    to: to.name,
    isWhole: false,
  };
  return ways.length === 0 ? [] : [{ answer: { found, ways }, leastKg: first.from }];
}

/** Part of a thing to another place: what stays and what goes are each as doubtful as their share of it. */
function movePart(
  { inputs }: Subject,
  copy: LoadingRecord,
  item: LoadingItemRecord,
  to: StationRecord,
  massKg: number,
): void {
  const figures = loadFigures(item, inputs.people);
  if (figures === null || figures.massKg === 0) return;
  const { name, known, sdKg, biasKg } = figures;
  const share = massKg / figures.massKg;
  const staying = copy.items.find(({ id }) => id === item.id);
  if (staying === undefined) return;
  staying.typed = { name, known, massKg: figures.massKg - massKg, sdKg: sdKg * (1 - share), biasKg };
  copy.items.push(
    freshItem(copy, to, { name: `${name}, part`, known, massKg, sdKg: sdKg * share, biasKg: 0 }),
  );
}

function orderRemedies(subject: Subject): Answer[] {
  const { aircraft, loading } = subject.inputs;
  if (aircraft.tanks.length < 2) return [];
  const ways = burnChoices(aircraft.tanks, loading.burn.everyMin).flatMap(({ word, burn }) => {
    const after = changed(subject, (copy) => {
      copy.burn = { ...copy.burn, ...burn };
    });
    const way = wayOf(subject, after, null);
    return way === null ? [] : [{ word, way }];
  });
  return ways
    .slice(0, MOST_OFFERED)
    .map(({ word, way }): Answer => ({ found: { kind: 'tank order', words: word }, ways: [way] }));
}

/** Another landing time, where that alone is wrong. */
function landingRemedies(subject: Subject): Answer[] {
  const nowS = subject.inputs.loading.flight.landingAfterS;
  const [range] = landingRanges(subject.asked);
  if (nowS === null || range === undefined) return [];
  // Whole minutes inside the range.
  const fromS = Math.ceil(range.from / 60 - 1e-9) * 60;
  const toS = Math.floor(range.to / 60 + 1e-9) * 60;
  if (fromS > toS || (nowS >= range.from && nowS <= range.to)) return [];
  const value = nowS < fromS ? fromS : toS;
  const after = changed(subject, (copy) => {
    copy.flight.landingAfterS = value;
  });
  const way = wayOf(subject, after, value);
  return way === null ? [] : [{ found: { kind: 'landing', fromS, toS }, ways: [way] }];
}

/** How heavy a passenger or a thing may be, those first that have to lose least; or how heavy the pilot has to be. */
function loadRemedies(subject: Subject): Answer[] {
  const { aircraft, loading, people } = subject.inputs;
  const pilot = pilotItemOf(subject.inputs);
  const found = loading.items.flatMap((item, index): { answer: Answer; lossKg: number }[] => {
    const station = aircraft.stations.find(({ id }) => id === item.stationId);
    const figures = loadFigures(item, people);
    if (station === undefined || figures === null) return [];
    const ranges = loadRanges(subject.asked, index);
    const last = ranges.at(-1);
    const first = ranges[0];
    if (first === undefined || last === undefined) return [];
    const about = { place: station.name, who: figures.name, nowKg: figures.massKg };
    const apply = (copy: LoadingRecord, massKg: number) => {
      withMassKg(copy, item.id, people, massKg);
    };
    const answer = (kind: 'largest load' | 'least load', ways: Way[]) =>
      ways.length === 0
        ? []
        : [{ answer: { found: { kind, ...about }, ways }, lossKg: figures.massKg - last.to }];
    if (item !== pilot && figures.massKg > last.to && last.to > 0)
      return answer('largest load', waysTo(subject, last, 'to', { quantity: 'mass', apply }));
    if (item === pilot && figures.massKg < first.from)
      return answer('least load', waysTo(subject, first, 'from', { quantity: 'mass', apply }));
    return [];
  });
  return found
    .sort((a, b) => a.lossKg - b.lossKg)
    .slice(0, MOST_OFFERED)
    .map(({ answer }) => answer);
}

function ballastRemedies(subject: Subject): Answer[] {
  const { stations } = subject.inputs.aircraft;
  const taken = new Set(subject.inputs.loading.items.map(({ stationId }) => stationId));
  const places = stations.filter(({ id, kind }) => kind !== 'seat' || !taken.has(id));
  return places
    .flatMap((station): Answer[] => {
      const found = ballastAt(subject.asked, station.id, usualSeatArmM(station));
      if (found === null || found.leastKg === 0) return [];
      const range = { from: found.leastKg, to: found.mostKg };
      const ways = waysTo(subject, range, 'from', {
        quantity: 'mass',
        apply: (copy, massKg) => {
          const typed = { name: 'Ballast', massKg, known: 'weighed' as const, sdKg: 0.3, biasKg: 0 };
          copy.items.push(freshItem(copy, station, typed));
        },
      });
      return ways.length === 0
        ? []
        : [{ found: { kind: 'ballast', place: station.name, mostKg: found.mostKg }, ways }];
    })
    .sort((a, b) => (a.ways[0]?.value ?? 0) - (b.ways[0]?.value ?? 0))
    .slice(0, MOST_OFFERED);
}
