import { termsOf } from '../../../shared-calc/loading/review-table/begin-table.ts';
import type { ReviewTableRecord } from '../../../shared-calc/loading/review-table/table-record.ts';
import type { AircraftRecord, LoadingRecord } from '../../../shared-calc/loading/records.ts';
import { exampleAircraft } from '../../main/example-aircraft.ts';
import { busyAeroplane, busyLoading } from './busy-aeroplane.ts';

const manual = { from: 'manual', comparedOn: '2026-04-02' } as const;

/** The size that speed is promised for, as the library keeps it: 12 stations, 4 tanks, 4 envelopes. */
export function busyAircraft(): AircraftRecord {
  return {
    ...exampleAircraft(),
    id: 'busy',
    mac: null,
    maxMasses: { ...busyAeroplane.maxMasses },
    groups: [],
    stations: busyAeroplane.stations.map(({ id, name, mostKg }, i) => ({
      id,
      name,
      kind: i < 2 ? 'seat' : 'baggage',
      arm: { kind: 'fixed', armM: 1.5 + 0.07 * i },
      leastKg: null,
      mostKg,
      source: manual,
    })),
    tanks: busyAeroplane.tanks.map(({ id, name, side, capacityL, unusableL, densityKgPerL, arm }) => {
      if (arm.kind !== 'armTable') throw new Error('every tank has a table of arms');
      return {
        id,
        name,
        side,
        capacityL,
        unusableL,
        densityKgPerL,
        arm: { ...arm, knots: arm.knots.map((knot) => ({ ...knot })) },
        fuelKind: 'unleaded 95',
        source: manual,
      };
    }),
    envelopes: busyAeroplane.envelopes.map(({ id, name, phase, category, across, vertices }) => ({
      id,
      name,
      phase,
      category,
      across,
      vertices: vertices.map((vertex) => ({ ...vertex })),
      source: manual,
    })),
  };
}

/** A loading with something at each of its places, each tank in doubt. */
export function busyRecord(): LoadingRecord {
  return {
    id: 'busy',
    aircraftId: 'busy',
    name: 'Busy',
    category: '',
    items: busyLoading.loads.map(({ stationId, massKg, massSdKg }) => ({
      id: `item-${stationId}`,
      stationId,
      seatArmM: null,
      personId: null,
      typed: { name: stationId, massKg, known: 'weighed', sdKg: massSdKg, biasKg: 0 },
    })),
    fuel: busyLoading.fuel.map((fuel) => ({ ...fuel })),
    burn: { ...busyLoading.burn, tankIds: [...busyLoading.burn.tankIds] },
    flight: { ...busyLoading.flight, reserveMin: 30 },
  };
}

/** So many rows, each a little heavier, by so many columns of rising fuel. */
export function busyTable(rowCount: number, columnCount: number): ReviewTableRecord {
  const record = busyRecord();
  return {
    aircraftId: 'busy',
    terms: termsOf(record),
    split: 'even',
    fuelDoubtL: 1,
    rows: Array.from({ length: rowCount }, (_, row) => ({
      id: `row-${String(row)}`,
      name: `Row ${String(row)}`,
      items: record.items.map((item) => ({
        ...item,
        typed: item.typed === null ? null : { ...item.typed, massKg: item.typed.massKg + row / 5 },
      })),
    })),
    columns: Array.from({ length: columnCount }, (_, column) => ({
      id: `column-${String(column)}`,
      kind: 'total',
      totalL: 40 + (70 * column) / columnCount,
    })),
  };
}
