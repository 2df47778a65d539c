import type { Fault } from './aircraft-faults.ts';
import type { AircraftRecord, LoadingRecord } from './records.ts';

/**
 * What in a loading cannot be on this aeroplane: a place it does not have, a tank over its usable contents.
 * A load above a station's limit is no fault: it is kept, and the verdict says so.
 * @param goneStations names of stations that were removed, by id: loads on them are kept until they are moved
 */
export function loadingFaults(
  loading: Omit<LoadingRecord, 'id'>,
  aircraft: AircraftRecord,
  goneStations: ReadonlyMap<string, string> = new Map(),
): Fault[] {
  return [
    ...itemFaults(loading, aircraft, goneStations),
    ...fuelFaults(loading, aircraft),
    ...burnFaults(loading, aircraft),
  ];
}

function itemFaults(
  { items }: Omit<LoadingRecord, 'id'>,
  { stations }: AircraftRecord,
  gone: ReadonlyMap<string, string>,
): Fault[] {
  const seen = new Set<string>();
  return items.flatMap((item, index) => {
    const path = `items[${String(index)}]`;
    const faults: Fault[] = [];
    if (seen.has(item.id))
      faults.push({ path: `${path}.id`, sentence: `the identifier ${item.id} is used twice` });
    seen.add(item.id);
    if (item.personId === null && item.typed === null)
      faults.push({ path, sentence: 'a load needs a person or thing of the list, or a typed mass' });
    const station = stations.find(({ id }) => id === item.stationId);
    if (station === undefined) {
      if (!gone.has(item.stationId))
        faults.push({
          path: `${path}.stationId`,
          sentence: `the aeroplane has no station ${item.stationId}`,
        });
      return faults;
    }
    const { arm } = station;
    if (arm.kind === 'adjustable') {
      if (item.seatArmM === null)
        faults.push({
          path: `${path}.seatArmM`,
          sentence: `${station.name} is adjustable: say where it stands`,
        });
      else if (item.seatArmM < arm.foremostM || item.seatArmM > arm.aftmostM)
        faults.push({
          path: `${path}.seatArmM`,
          sentence: `${station.name} stands at ${metres(item.seatArmM)}; it runs from ${metres(arm.foremostM)} to ${metres(arm.aftmostM)}`,
        });
    } else if (item.seatArmM !== null)
      faults.push({ path: `${path}.seatArmM`, sentence: `${station.name} does not move: it has one arm` });
    return faults;
  });
}

function fuelFaults({ fuel }: Omit<LoadingRecord, 'id'>, { tanks }: AircraftRecord): Fault[] {
  const seen = new Set<string>();
  return fuel.flatMap((each, index) => {
    const path = `fuel[${String(index)}]`;
    const tank = tanks.find(({ id }) => id === each.tankId);
    if (tank === undefined)
      return [{ path: `${path}.tankId`, sentence: `the aeroplane has no tank ${each.tankId}` }];
    if (seen.has(each.tankId)) return [{ path: `${path}.tankId`, sentence: `${tank.name} is named twice` }];
    seen.add(each.tankId);
    const usableL = tank.capacityL - tank.unusableL;
    const faults: Fault[] = [];
    if (!(each.lowL <= each.bestL && each.bestL <= each.highL))
      faults.push({
        path: `${path}.bestL`,
        sentence: `for ${tank.name} the low figure may not be above the best, nor the best above the high one`,
      });
    // Litres that come from a gallon figure may differ from the capacity in the last place.
    if (each.bestL > usableL * (1 + 1e-9))
      faults.push({
        path: `${path}.bestL`,
        sentence: `${tank.name} holds at most ${litres(usableL)} of usable fuel; ${litres(each.bestL)} were entered`,
      });
    return faults;
  });
}

function burnFaults({ burn }: Omit<LoadingRecord, 'id'>, { tanks }: AircraftRecord): Fault[] {
  const faults: Fault[] = [];
  burn.tankIds.forEach((tankId, index) => {
    if (!tanks.some(({ id }) => id === tankId))
      faults.push({
        path: `burn.tankIds[${String(index)}]`,
        sentence: `the aeroplane has no tank ${tankId}`,
      });
    else if (burn.tankIds.indexOf(tankId) !== index)
      faults.push({
        path: `burn.tankIds[${String(index)}]`,
        sentence: 'a tank stands twice in the order of burning',
      });
  });
  if (burn.kind === 'alternate' && burn.everyMin === null)
    faults.push({
      path: 'burn.everyMin',
      sentence: 'to alternate between tanks, say after how many minutes',
    });
  if (burn.kind !== 'alternate' && burn.everyMin !== null)
    faults.push({
      path: 'burn.everyMin',
      sentence: 'minutes between tanks belong to the alternating order only',
    });
  const { returnLine } = burn;
  if (returnLine !== null && !tanks.some(({ id }) => id === returnLine.intoTankId))
    faults.push({
      path: 'burn.returnLine.intoTankId',
      sentence: `the aeroplane has no tank ${returnLine.intoTankId}`,
    });
  return faults;
}

function metres(valueM: number): string {
  return `${String(Math.round(valueM * 10_000) / 10_000)} m`;
}

function litres(valueL: number): string {
  return `${String(Math.round(valueL * 100) / 100)} L`;
}
