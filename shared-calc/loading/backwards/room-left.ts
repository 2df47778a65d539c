import { usualSeatArmM, withMassKg } from '../alter.ts';
import { loadFigures } from '../case-of.ts';
import { knownMassDefaults } from '../known-mass.ts';
import type { LoadingRecord } from '../records.ts';
import type { Answer } from './answer.ts';
import { fuelRoom } from './fuel-answers.ts';
import { landingRanges } from './landings.ts';
import { loadRanges, withLoad } from './loads.ts';
import { changed, freshItem, pilotItemOf, waysTo, wayOf, type Subject } from './subject.ts';

/**
 * What a loading that is inside still has room for: the heaviest passenger, the largest load at each other place, the
 * fuel quantities that stay inside, the longest flight, and the time before which it is too heavy to land.
 */
export function roomLeft(subject: Subject): Answer[] {
  return [...fuelRoom(subject), ...loadRoom(subject), ...landingRoom(subject)];
}

function loadRoom(subject: Subject): Answer[] {
  const { aircraft, loading, people } = subject.inputs;
  const pilot = pilotItemOf(subject.inputs);
  return aircraft.stations.flatMap((station): Answer[] => {
    const items = loading.items.filter(({ stationId }) => stationId === station.id);
    const isSeat = station.kind === 'seat';
    const [item] = items;
    if (isSeat && (item === undefined ? pilot === null : item === pilot)) return [];
    // Whoever sits there may be exchanged for somebody heavier; at any other place the question is what may be added.
    const figures = isSeat && item !== undefined ? loadFigures(item, people) : null;
    const isExchange = item !== undefined && figures !== null;
    const { sdKg, biasKg } = knownMassDefaults('weighed', isSeat ? 'person' : 'thing');
    const none = { stationId: station.id, name: '', massKg: 0, biasKg: 0, massSdKg: sdKg, armSdM: 0 };
    const ranges = isExchange
      ? loadRanges(subject.asked, loading.items.indexOf(item))
      : loadRanges(
          withLoad(subject.asked, { ...none, armM: usualSeatArmM(station) }),
          subject.asked.loading.loads.length,
        );
    const last = ranges.at(-1);
    if (last === undefined || last.to <= 0) return [];
    const apply = (copy: LoadingRecord, massKg: number) => {
      if (isExchange) withMassKg(copy, item.id, people, massKg);
      else {
        const typed = {
          name: isSeat ? 'Passenger' : 'Load',
          massKg,
          known: 'weighed' as const,
          sdKg,
          biasKg,
        };
        copy.items.push(freshItem(copy, station, typed));
      }
    };
    const ways = waysTo(subject, last, 'to', { quantity: 'mass', apply });
    if (ways.length === 0) return [];
    const nowKg = isExchange ? figures.massKg : null;
    const who = isExchange ? figures.name : isSeat ? 'passenger' : null;
    return [{ found: { kind: 'largest load', place: station.name, who, nowKg }, ways }];
  });
}

function landingRoom(subject: Subject): Answer[] {
  const [range] = landingRanges(subject.asked);
  if (range === undefined || range.from === 0) return [];
  const fromS = Math.ceil(range.from / 60 - 1e-9) * 60;
  const toS = Math.floor(range.to / 60 + 1e-9) * 60;
  const after = changed(subject, (copy) => {
    copy.flight.landingAfterS = fromS;
  });
  const way = fromS <= toS ? wayOf(subject, after, fromS) : null;
  return way === null ? [] : [{ found: { kind: 'landing', fromS, toS }, ways: [way] }];
}
