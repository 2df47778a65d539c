import type { AircraftRecord, LoadingRecord } from '../records.ts';
import type { ColumnFuel } from './column-fuel.ts';
import type { ReviewRowRecord, ReviewTableRecord } from './table-record.ts';

/**
 * The loading that a cell of the review table stands for. What the aeroplane has lost since (a tank) is left out; a place
 * that it has lost stays, so that the loading says so.
 * @param filled   the fuel of its column, which fits
 * @param identity id and name of the loading that is made
 */
export function cellLoading(
  aircraft: Pick<AircraftRecord, 'id' | 'tanks'>,
  table: Pick<ReviewTableRecord, 'terms'>,
  row: Pick<ReviewRowRecord, 'items'>,
  filled: Extract<ColumnFuel, { fits: true }>,
  identity: Pick<LoadingRecord, 'id' | 'name'>,
): LoadingRecord {
  const { burn, flight, category } = table.terms;
  const isKept = (tankId: string) => aircraft.tanks.some(({ id }) => id === tankId);
  const ordered = burn.tankIds.filter(isKept);
  // Fuel in a tank that is in no order would never be burned.
  const added = filled.fuel
    .filter(({ tankId, highL }) => highL > 0 && !ordered.includes(tankId))
    .map(({ tankId }) => tankId);
  const { returnLine } = burn;
  return {
    id: identity.id,
    aircraftId: aircraft.id,
    name: identity.name,
    category,
    items: row.items,
    fuel: [...filled.fuel],
    burn: {
      ...burn,
      tankIds: [...ordered, ...added],
      returnLine: returnLine !== null && isKept(returnLine.intoTankId) ? returnLine : null,
    },
    flight: { ...flight, landingAfterS: filled.landingAfterS },
  };
}

/** Whether two loadings of an aeroplane are the same but for their names: one of them is then opened, not made anew. */
export function isSameLoading(a: LoadingRecord, b: LoadingRecord): boolean {
  const plain = ({ aircraftId, category, items, fuel, burn, flight }: LoadingRecord) =>
    JSON.stringify([
      aircraftId,
      category,
      items.map(({ stationId, seatArmM, personId, typed }) => [
        stationId,
        seatArmM,
        personId,
        typed === null ? null : [typed.name, typed.massKg, typed.known, typed.sdKg, typed.biasKg],
      ]),
      fuel.map(({ tankId, lowL, bestL, highL, temperatureC }) => [tankId, lowL, bestL, highL, temperatureC]),
      [burn.kind, burn.tankIds, burn.everyMin, burn.returnLine?.intoTankId, burn.returnLine?.pumpLPerH],
      [
        flight.taxiL,
        flight.climbL,
        flight.climbMin,
        flight.cruiseLPerH,
        flight.landingAfterS,
        flight.reserveMin,
      ],
    ]);
  return plain(a) === plain(b);
}
