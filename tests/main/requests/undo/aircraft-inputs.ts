import type { AircraftRecord, WeighingRecord } from '../../../../shared-calc/loading/records.ts';
import { exampleAircraft } from '../../example-aircraft.ts';
import type { MemoryLibrary } from '../../memory-library.ts';
import type { MakeInput } from './change-inputs.ts';
import type { Draw } from './draw.ts';

export async function someAircraftId(library: MemoryLibrary, draw: Draw): Promise<string | null> {
  const { aircraft } = (await library.ask('aircraft.list', {})) as { aircraft: { id: string }[] };
  return draw.pick(aircraft)?.id ?? null;
}

export async function aircraftOf(library: MemoryLibrary, id: string): Promise<AircraftRecord> {
  return ((await library.ask('aircraft.get', { id })) as { aircraft: AircraftRecord }).aircraft;
}

/** The example aeroplane with parts of its own: identifiers are unique in a library. */
function anotherAircraft(draw: Draw) {
  const mark = `${String(draw.below(1_000_000))}`;
  const fields = exampleAircraft();
  const own = (id: string) => `${id}-${mark}`;
  return {
    ...fields,
    id: undefined,
    name: `Heron ${draw.word()}`,
    stations: fields.stations.map((each) => ({ ...each, id: own(each.id) })),
    tanks: fields.tanks.map((each) => ({ ...each, id: own(each.id) })),
    envelopes: fields.envelopes.map((each) => ({ ...each, id: own(each.id) })),
    groups: fields.groups.map((each) => ({
      ...each,
      id: own(each.id),
      stationIds: each.stationIds.map(own),
    })),
  };
}

const edits: ((aircraft: AircraftRecord, draw: Draw) => void)[] = [
  (aircraft, draw) => (aircraft.name = `Heron ${draw.word()}`),
  (aircraft, draw) => (aircraft.mac = draw.chance(0.5) ? null : { leadingEdgeArmM: 1.5, lengthM: 1.2 }),
  (aircraft, draw) => {
    const station = draw.pick(aircraft.stations);
    if (station !== null) station.mostKg = draw.pick([null, 90, 115]);
  },
  (aircraft) => {
    // The last place goes, and with it the groups that count it.
    const gone = aircraft.stations.pop();
    aircraft.groups = aircraft.groups.filter((group) => !group.stationIds.includes(gone?.id ?? ''));
  },
  (aircraft) => aircraft.stations.reverse(),
  (aircraft, draw) =>
    aircraft.stations.push({
      id: `shelf-${String(draw.below(1_000_000))}`,
      name: `Shelf ${draw.word()}`,
      kind: 'baggage',
      arm: { kind: 'adjustable', foremostM: 2.2, aftmostM: 2.5 },
      leastKg: null,
      mostKg: 5,
      source: { from: 'measured', comparedOn: null },
    }),
  (aircraft, draw) => {
    const tank = draw.pick(aircraft.tanks);
    if (tank !== null) tank.unusableL = draw.below(4);
  },
  (aircraft, draw) => {
    const tank = draw.pick(aircraft.tanks);
    if (tank !== null)
      tank.arm = {
        kind: 'momentTable',
        counts: 'usable',
        tableDensityKgPerL: 0.72,
        knots: [
          { volumeL: 0, momentKgM: 0 },
          { volumeL: 20 + draw.below(20), momentKgM: 31 },
        ],
      };
  },
  (aircraft, draw) => {
    if (draw.chance(0.5)) delete aircraft.printed.momentPer;
    else aircraft.printed.momentPer = draw.pick([100, 1000] as const) ?? 100;
  },
  (aircraft, draw) => {
    // The manual gives lateral arms, or no longer does; a place and a tank get theirs.
    if (draw.chance(0.3)) delete aircraft.lateral;
    else
      aircraft.lateral = {
        across: draw.chance(0.5) ? 'arm' : 'moment',
        left: draw.pick([null, -2, -0.1]),
        right: 0.1,
        oilArmM: draw.pick([null, 0]),
      };
    const station = draw.pick(aircraft.stations);
    if (station !== null) station.lateralArmM = draw.below(3) / 10;
    const tank = draw.pick(aircraft.tanks);
    if (tank !== null) tank.lateralArmM = -1.6;
  },
  (aircraft, draw) => {
    const tank = draw.pick(aircraft.tanks);
    if (tank === null) return;
    const blend = draw.pick([
      null,
      { kind: 'avgas' as const },
      { kind: 'motor gasoline' as const, ethanolPercent: draw.below(100) },
      { kind: 'own' as const, at15KgPerL: 0.745 },
    ]);
    if (blend === null) delete tank.blend;
    else tank.blend = blend;
  },
  (aircraft) => aircraft.envelopes[0]?.vertices.push({ across: 1.8, massKg: 380 }),
  (aircraft) => aircraft.envelopes.pop(),
  (aircraft, draw) => (aircraft.performance.ownReserveMin = draw.below(60)),
];

export const aircraftInputs = {
  'aircraft.put': async (library, draw) => {
    const id = await someAircraftId(library, draw);
    if (id === null || draw.chance(0.15)) return { aircraft: anotherAircraft(draw) };
    const aircraft = await aircraftOf(library, id);
    for (let count = 1 + draw.below(3); count > 0; count--) draw.pick(edits)?.(aircraft, draw);
    return draw.chance(0.3) ? { aircraft, named: `edit ${draw.word()}` } : { aircraft };
  },
  'aircraft.remove': async (library, draw) => {
    const id = await someAircraftId(library, draw);
    // Seldom, so that aeroplanes live long enough for something to happen to them.
    return id === null || draw.chance(0.7) ? null : { id };
  },
  'aircraft.choose': async (library, draw) => {
    const id = await someAircraftId(library, draw);
    return id === null ? null : { id };
  },
  'weighing.add': async (library, draw) => {
    const aircraftId = await someAircraftId(library, draw);
    return aircraftId === null
      ? null
      : {
          aircraftId,
          weighedOn: `2026-0${String(1 + draw.below(9))}-14`,
          how: 'scales',
          emptyMassKg: 310 + draw.below(20),
          emptyArmM: 1.776,
          massSdKg: 0.9,
          armSdM: 0.002,
          unusableFuelIncluded: draw.chance(0.5),
          oilIncluded: true,
          note: '',
          ...(draw.chance(0.5) ? { lateralArmM: 0.003, lateralArmSdM: 0.002 } : {}),
          readings: [
            {
              ...{ wheel: 'nose wheel', armM: 0.69, readingKg: 51.3, tareKg: 0 },
              ...(draw.chance(0.5) ? { lateralArmM: 0 } : {}),
            },
          ],
        };
  },
  'weighing.withdraw': (library, draw) => someWeighing(library, draw, false),
  'weighing.reinstate': (library, draw) => someWeighing(library, draw, true),
} satisfies Record<string, MakeInput>;

async function someWeighing(library: MemoryLibrary, draw: Draw, withdrawn: boolean): Promise<unknown> {
  const aircraftId = await someAircraftId(library, draw);
  if (aircraftId === null) return null;
  const { weighings } = (await library.ask('aircraft.get', { id: aircraftId })) as {
    weighings: WeighingRecord[];
  };
  const weighing = draw.pick(weighings.filter((each) => each.withdrawn === withdrawn));
  return weighing === null ? null : { id: weighing.id };
}
