import { loadFigures } from './case-of.ts';
import type { LoadingRecord, PersonRecord, StationRecord, TankRecord } from './records.ts';

// One way to change a figure of a loading, whether it was typed, stepped or dragged. Each alters the copy it is given.

/** A mass for this loading alone; whoever is on the list keeps theirs. */
export function withMassKg(
  copy: LoadingRecord,
  itemId: string,
  people: readonly PersonRecord[],
  massKg: number,
): void {
  const item = copy.items.find(({ id }) => id === itemId);
  const figures = item === undefined ? null : loadFigures(item, people);
  if (item === undefined || figures === null || figures.massKg === massKg) return;
  item.typed = {
    name: figures.name,
    massKg,
    known: figures.known,
    sdKg: figures.sdKg,
    biasKg: figures.biasKg,
  };
}

/** Usable litres in a tank, as doubtful as before (or as told); never beyond empty or full. */
export function withFuelL(
  copy: LoadingRecord,
  tank: Pick<TankRecord, 'id' | 'capacityL' | 'unusableL'>,
  bestL: number,
  doubtL?: number,
): void {
  const old = copy.fuel.find(({ tankId }) => tankId === tank.id);
  // A full tank's high figure is cut off by its size: the wider side tells how well its contents are known.
  const doubt = doubtL ?? (old === undefined ? 0 : Math.max(old.bestL - old.lowL, old.highL - old.bestL));
  const usableL = tank.capacityL - tank.unusableL;
  const figures = {
    // As warm as before: what is poured in is not asked for its own temperature.
    ...(old?.temperatureC === undefined ? {} : { temperatureC: old.temperatureC }),
    tankId: tank.id,
    lowL: Math.max(0, bestL - doubt),
    bestL,
    highL: Math.max(bestL, Math.min(usableL, bestL + doubt)),
  };
  copy.fuel =
    old === undefined
      ? [...copy.fuel, figures]
      : copy.fuel.map((each) => (each.tankId === tank.id ? figures : each));
  // Fuel in a tank that is in no order would never be burned.
  if (!copy.burn.tankIds.includes(tank.id)) copy.burn.tankIds = [...copy.burn.tankIds, tank.id];
}

type Seat = Pick<StationRecord, 'id' | 'arm'>;

/** Whoever sits on one of two seats goes to the other. */
export function withSwappedSeats(copy: LoadingRecord, one: Seat, other: Seat): void {
  copy.items = copy.items.map((item) => {
    if (item.stationId !== one.id && item.stationId !== other.id) return item;
    const to = item.stationId === one.id ? other : one;
    return { ...item, stationId: to.id, seatArmM: usualSeatArmM(to) };
  });
}

/** Where an adjustable seat stands for somebody new: in the middle of its rails. */
export function usualSeatArmM({ arm }: Pick<StationRecord, 'arm'>): number | null {
  return arm.kind === 'adjustable' ? (arm.foremostM + arm.aftmostM) / 2 : null;
}
