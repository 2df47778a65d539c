import type { DipstickRecord } from '../../../../shared-calc/fuel/dipstick/dipstick-record.ts';
import type {
  CalibrationRecord,
  ContainerRecord,
  FillTestRecord,
} from '../../../../shared-calc/fuel/records.ts';
import { exampleFillTest } from '../../example-fill-test.ts';
import type { MemoryLibrary } from '../../memory-library.ts';
import { aircraftOf } from './aircraft-inputs.ts';
import type { MakeInput } from './change-inputs.ts';
import type { Draw } from './draw.ts';

/** Every tank of every aeroplane: what fuel rests on is rare enough in a random library without drawing twice. */
async function tankIds(library: MemoryLibrary): Promise<string[]> {
  const { aircraft } = (await library.ask('aircraft.list', {})) as { aircraft: { id: string }[] };
  const all = await Promise.all(aircraft.map(({ id }) => aircraftOf(library, id)));
  return all.flatMap(({ tanks }) => tanks.map(({ id }) => id));
}

async function someOfTanks<R>(library: MemoryLibrary, draw: Draw, list: string): Promise<R | null> {
  const found: R[] = [];
  for (const tankId of await tankIds(library)) found.push(...((await library.ask(list, { tankId })) as R[]));
  return draw.pick(found);
}

const someTest = (library: MemoryLibrary, draw: Draw) =>
  someOfTanks<FillTestRecord>(library, draw, 'fillTest.list');

async function someCalibration(library: MemoryLibrary, draw: Draw) {
  const found = await someOfTanks<CalibrationRecord>(library, draw, 'calibration.list');
  return found === null ? null : { id: found.id };
}

async function someContainer(library: MemoryLibrary, draw: Draw): Promise<ContainerRecord | null> {
  const kept = draw.pick(
    (await library.ask('container.list', {})) as (ContainerRecord & { removed: boolean })[],
  );
  if (kept === null) return null;
  const { id, name, nominalL, how, scaleSdRatio, pourSdL, weighed } = kept;
  return { id, name, nominalL, how, scaleSdRatio, pourSdL, weighed };
}

async function someCard(library: MemoryLibrary, draw: Draw) {
  const found = await someOfTanks<{ serial: number }>(library, draw, 'fuelCard.list');
  return found === null ? null : { serial: found.serial };
}

async function someCheck(library: MemoryLibrary, draw: Draw) {
  const found = await someOfTanks<{ id: string }>(library, draw, 'fuelCheck.list');
  return found === null ? null : { id: found.id };
}

export const fuelInputs = {
  'fillTest.put': async (library, draw) => {
    const test = await someTest(library, draw);
    const container = await someContainer(library, draw);
    if (test === null || draw.chance(0.3)) {
      const tankId = draw.pick(await tankIds(library));
      if (tankId === null) return null;
      const fresh = exampleFillTest(`test-${String(draw.below(1_000_000))}`, tankId);
      for (const run of fresh.runs) run.containerId = container?.id ?? null;
      return { test: fresh };
    }
    if (draw.chance(0.3))
      test.pins = [
        { id: `pin-${String(draw.below(1_000_000))}`, positionRatio: 0.5, usableL: 20, sdL: 0.3, note: '' },
      ];
    const pours = test.runs[0]?.pours;
    if (draw.chance(0.5)) pours?.pop();
    else
      pours?.push({
        id: `pour-${String(draw.below(1_000_000))}`,
        volumeL: 1 + draw.below(5),
        reading: null,
        asideReason: null,
        atEpochS: 1_000,
        written: draw.chance(0.5) ? null : { volumeL: 2, reading: { at: 'emptyStop' } },
      });
    return { test };
  },
  'fillTest.remove': async (library, draw) => {
    const test = await someTest(library, draw);
    return test === null || draw.chance(0.6) ? null : { id: test.id };
  },
  'calibration.adopt': async (library, draw) => {
    const test = await someTest(library, draw);
    // A test whose pours were taken away again no longer makes a curve.
    if (
      test === null ||
      (test.runs[0]?.pours.filter(({ reading }) => reading?.at === 'scale').length ?? 0) < 3
    )
      return null;
    return { tankId: test.tankId, testIds: [test.id], adoptedOn: '2026-05-09' };
  },
  'calibration.withdraw': (library, draw) => someCalibration(library, draw),
  'calibration.reinstate': (library, draw) => someCalibration(library, draw),
  'fuelCard.record': async (library, draw) => {
    const calibration = await someCalibration(library, draw);
    return calibration === null
      ? null
      : { calibrationId: calibration.id, printedOn: '2026-05-11', reading: 'nearestDivision' };
  },
  'fuelCard.withdraw': (library, draw) => someCard(library, draw),
  'fuelCard.reinstate': (library, draw) => someCard(library, draw),
  'fuelCheck.record': async (library, draw) => {
    const tankId = draw.pick(await tankIds(library));
    if (tankId === null) return null;
    const common = { tankId, checkedOn: '2026-09-12', attitude: 'level flight', note: draw.word() };
    if (draw.chance(0.3)) return { check: { kind: 'zero', ...common, reading: { at: 'emptyStop' } } };
    const container = await someContainer(library, draw);
    return {
      check: {
        kind: 'refill',
        ...common,
        before: { at: 'scale', positionRatio: 0.75 },
        after: { at: 'scale', positionRatio: 0.25 },
        flightS: draw.chance(0.5) ? null : 3600,
        refillL: 1 + draw.below(10),
        stateSdL: 0.5,
        containerId: container?.id ?? null,
      },
    };
  },
  'fuelCheck.withdraw': (library, draw) => someCheck(library, draw),
  'fuelCheck.reinstate': (library, draw) => someCheck(library, draw),
  'dipstick.put': async (library, draw) => {
    const tankId = draw.pick(await tankIds(library));
    if (tankId === null) return null;
    const before = (await library.ask('dipstick.get', { tankId })) as DipstickRecord | null;
    const fresh = { tankId, kind: 'dipstick', lengthMm: 200 + draw.below(300), readToMm: 5 };
    return { dipstick: before === null ? fresh : { ...before, readToMm: 1 + draw.below(10) } };
  },
  'dipstick.remove': async (library, draw) => {
    const found: DipstickRecord[] = [];
    for (const tankId of await tankIds(library)) {
      const dipstick = (await library.ask('dipstick.get', { tankId })) as DipstickRecord | null;
      if (dipstick !== null) found.push(dipstick);
    }
    const some = draw.pick(found);
    return some === null || draw.chance(0.3) ? null : { id: some.id };
  },
  'container.put': async (library, draw) => {
    const container = await someContainer(library, draw);
    if (container === null || draw.chance(0.3))
      return {
        container: {
          name: `Can ${draw.word()}`,
          nominalL: 3,
          how: 'weighed',
          scaleSdRatio: 0.006,
          pourSdL: 0.01,
        },
      };
    return { container: { ...container, nominalL: 1 + draw.below(20) } };
  },
  'container.remove': async (library, draw) => {
    const container = await someContainer(library, draw);
    return container === null ? null : { id: container.id };
  },
} satisfies Record<string, MakeInput>;
