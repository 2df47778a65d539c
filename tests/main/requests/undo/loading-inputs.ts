import type { LoadingRecord, PersonRecord } from '../../../../shared-calc/loading/records.ts';
import type { ReviewTableRecord } from '../../../../shared-calc/loading/review-table/table-record.ts';
import { examplePerson } from '../../example-aircraft.ts';
import type { MemoryLibrary } from '../../memory-library.ts';
import { aircraftOf, someAircraftId } from './aircraft-inputs.ts';
import type { MakeInput } from './change-inputs.ts';
import type { Draw } from './draw.ts';

async function somePerson(library: MemoryLibrary, draw: Draw): Promise<PersonRecord | null> {
  const kept = draw.pick((await library.ask('people.list', {})) as PersonRecord[]);
  if (kept === null) return null;
  const { id, name, kind, massKg, known, knownOn, sdKg, biasKg, note } = kept;
  return { id, name, kind, massKg, known, knownOn, sdKg, biasKg, note };
}

async function someLoadingId(library: MemoryLibrary, draw: Draw): Promise<string | null> {
  const aircraftId = await someAircraftId(library, draw);
  if (aircraftId === null) return null;
  const { loadings } = (await library.ask('loading.list', { aircraftId })) as { loadings: { id: string }[] };
  return draw.pick(loadings)?.id ?? null;
}

async function newLoading(library: MemoryLibrary, draw: Draw): Promise<Omit<LoadingRecord, 'id'> | null> {
  const aircraftId = await someAircraftId(library, draw);
  if (aircraftId === null) return null;
  const aircraft = await aircraftOf(library, aircraftId);
  const person = await somePerson(library, draw);
  const seat = aircraft.stations.find((station) => station.arm.kind === 'fixed');
  return {
    aircraftId,
    name: `Loading ${draw.word()}`,
    category: '',
    items:
      person === null || seat === undefined
        ? []
        : [{ id: 'item-1', stationId: seat.id, seatArmM: null, personId: person.id, typed: null }],
    fuel: aircraft.tanks.map((tank) => ({
      tankId: tank.id,
      lowL: 10,
      bestL: 11,
      highL: 12,
      ...(draw.chance(0.3) ? { temperatureC: 4 } : {}),
    })),
    burn: {
      kind: 'sequence',
      tankIds: aircraft.tanks.map((tank) => tank.id),
      everyMin: null,
      returnLine: null,
    },
    flight: { taxiL: 1.5, climbL: 0, climbMin: 0, cruiseLPerH: 18, landingAfterS: null, reserveMin: 45 },
  };
}

async function someSheet(library: MemoryLibrary, draw: Draw): Promise<{ serial: number } | null> {
  const aircraftId = await someAircraftId(library, draw);
  if (aircraftId === null) return null;
  const sheets = (await library.ask('loadingSheet.list', { aircraftId })) as { serial: number }[];
  const found = draw.pick(sheets);
  return found === null ? null : { serial: found.serial };
}

/** What the gauge reads, where a tank of the loading has an adopted curve. */
async function readByGauge(library: MemoryLibrary, { fuel }: LoadingRecord): Promise<void> {
  for (const each of fuel) {
    const curves = (await library.ask('calibration.list', { tankId: each.tankId })) as { id: string }[];
    const calibrationId = curves[0]?.id;
    if (calibrationId !== undefined) each.gauge = { reading: { at: 'emptyStop' }, calibrationId };
  }
}

export const loadingInputs = {
  'people.put': async (library, draw) => {
    const person = await somePerson(library, draw);
    if (person === null || draw.chance(0.3))
      return {
        person: { ...examplePerson('', `Person ${draw.word()}`, 50 + draw.below(50)), id: undefined },
      };
    return { person: { ...person, massKg: 50 + draw.below(50), note: draw.word() } };
  },
  'people.remove': async (library, draw) => {
    const person = await somePerson(library, draw);
    return person === null ? null : { id: person.id };
  },
  'loading.put': async (library, draw) => {
    const id = await someLoadingId(library, draw);
    if (id === null || draw.chance(0.3)) {
      const loading = await newLoading(library, draw);
      return loading === null ? null : { loading };
    }
    const { loading } = (await library.ask('loading.get', { id })) as { loading: LoadingRecord };
    const edit = draw.below(4);
    if (edit === 0) loading.name = `Loading ${draw.word()}`;
    else if (edit === 1) loading.items.pop();
    else if (edit === 2) {
      loading.flight.landingAfterS = draw.pick([null, 3600, 7200]);
      await readByGauge(library, loading);
    } else
      loading.items.push({
        id: `item-${String(draw.below(1_000_000))}`,
        stationId: (await aircraftOf(library, loading.aircraftId)).stations[0]?.id ?? 'none',
        seatArmM: null,
        personId: null,
        typed: { name: `Bag ${draw.word()}`, massKg: draw.below(20), known: 'stated', sdKg: 1, biasKg: 0 },
      });
    return { loading };
  },
  'loading.remove': async (library, draw) => {
    const id = await someLoadingId(library, draw);
    return id === null || draw.chance(0.5) ? null : { id };
  },
  'loadingSheet.record': async (library, draw) => {
    const loadingId = await someLoadingId(library, draw);
    return loadingId === null
      ? null
      : { loadingId, printedOn: '2026-05-11', paper: draw.pick(['A4', 'US Letter']) };
  },
  'loadingSheet.withdraw': (library, draw) => someSheet(library, draw),
  'loadingSheet.reinstate': (library, draw) => someSheet(library, draw),
  'reviewTable.put': async (library, draw) => {
    const aircraftId = await someAircraftId(library, draw);
    const loading = await newLoading(library, draw);
    if (aircraftId === null || loading?.aircraftId !== aircraftId) return null;
    if (draw.chance(0.2)) return { aircraftId, table: null };
    const { category, burn, flight, items } = loading;
    const { taxiL, climbL, climbMin, cruiseLPerH, reserveMin } = flight;
    const table: ReviewTableRecord = {
      aircraftId,
      terms: { category, burn, flight: { taxiL, climbL, climbMin, cruiseLPerH, reserveMin } },
      split: draw.pick(['even', 'capacity', 'order'] as const) ?? 'even',
      fuelDoubtL: draw.below(3),
      rows: [{ id: 'row-1', name: `Row ${draw.word()}`, items }],
      columns: [
        { id: 'full', kind: 'full' },
        { id: 'some', kind: 'total', totalL: draw.below(90) },
        { id: 'flight', kind: 'flight', flightS: 3600 },
      ],
    };
    return { aircraftId, table };
  },
  'verdicts.see': async (library, draw) => {
    const aircraftId = await someAircraftId(library, draw);
    if (aircraftId === null) return null;
    const verdicts = Array.from({ length: draw.below(3) }, (_, i) => ({
      id: `row-1 column-${String(i)}`,
      verdict: draw.pick(['inside', 'outside', 'not checked', 'does not fit'] as const),
      inShort: draw.word(),
      entriesMark: draw.word(),
    }));
    // Without a name it is no step of undo.
    return { aircraftId, about: draw.pick(['loadings', 'scenarios']), verdicts, named: 'marks taken off' };
  },
  'loading.choose': async (library, draw) => {
    const id = await someLoadingId(library, draw);
    return id === null ? null : { id };
  },
} satisfies Record<string, MakeInput>;
