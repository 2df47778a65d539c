import type { AircraftRecord, LoadingRecord, TankRecord } from '../records.ts';
import type { FuelSplit, ReviewColumnRecord, ReviewTableRecord, ReviewTerms } from './table-record.ts';

type Fuel = LoadingRecord['fuel'];

/** The fuel of a column in each tank; or that the tanks do not hold what it asks for. */
export type ColumnFuel =
  | {
      readonly fits: true;
      readonly fuel: Fuel;
      readonly totalL: number;
      readonly landingAfterS: number | null;
    }
  | { readonly fits: false; readonly neededL: number; readonly usableL: number };

/** A needed quantity is rounded up to what can be poured. */
const POURED_L = 0.1;
/** Halvings by which the least total is found: 3,000 L to a thousandth of a drop. */
const HALVINGS = 60;

/**
 * The fuel that a column stands for, in each tank of the aeroplane, with its doubt.
 *
 * A flight needs taxi, climb, cruise and reserve by the low figures of fuel: the same sum as `reserveOf`, solved for the
 * fuel and rounded up to a tenth of a litre. Its landing is planned at its time; a column of fuel plans none.
 */
export function columnFuel(
  { tanks }: Pick<AircraftRecord, 'tanks'>,
  table: Pick<ReviewTableRecord, 'terms' | 'split' | 'fuelDoubtL'>,
  column: ReviewColumnRecord,
): ColumnFuel {
  const { terms, split, fuelDoubtL: doubtL } = table;
  const usableL = tanks.reduce((sum, tank) => sum + usableOf(tank), 0);
  const filled = (totalL: number, landingAfterS: number | null = null): ColumnFuel =>
    totalL > usableL * (1 + 1e-9)
      ? { fits: false, neededL: totalL, usableL }
      : {
          fits: true,
          fuel: withDoubt(tanks, sharedBy(tanks, terms, split, Math.min(totalL, usableL)), doubtL),
          totalL: Math.min(totalL, usableL),
          landingAfterS,
        };
  switch (column.kind) {
    case 'full':
      return filled(usableL);
    case 'total':
      return filled(column.totalL);
    case 'tanks': {
      const litres = tanks.map((tank) => column.fuel.find(({ tankId }) => tankId === tank.id)?.litresL ?? 0);
      const over = tanks.some((tank, i) => (litres[i] ?? 0) > usableOf(tank) * (1 + 1e-9));
      const totalL = litres.reduce((sum, each) => sum + each, 0);
      if (over) return { fits: false, neededL: totalL, usableL };
      return { fits: true, fuel: withDoubt(tanks, litres, doubtL), totalL, landingAfterS: null };
    }
    case 'flight': {
      const neededL = flightNeedsL(terms, column.flightS);
      const lowL = (totalL: number) =>
        withDoubt(tanks, sharedBy(tanks, terms, split, totalL), doubtL).reduce((sum, f) => sum + f.lowL, 0);
      if (lowL(usableL) < neededL * (1 - 1e-12)) return { fits: false, neededL, usableL };
      return filled(Math.min(usableL, roundedUp(leastTotalL(lowL, neededL, usableL))), column.flightS);
    }
  }
}

/** Litres that a flight of so many seconds takes with its reserve, taxi and climb counted apart. */
function flightNeedsL({ flight }: ReviewTerms, flightS: number): number {
  const cruiseS = Math.max(0, flightS + 60 * flight.reserveMin - 60 * flight.climbMin);
  return flight.taxiL + flight.climbL + (cruiseS / 3600) * flight.cruiseLPerH;
}

function leastTotalL(lowL: (totalL: number) => number, neededL: number, usableL: number): number {
  let [from, to] = [0, usableL];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (from + to) / 2;
    if (lowL(middle) >= neededL) to = middle;
    else from = middle;
  }
  return to;
}

function roundedUp(litresL: number): number {
  return Math.ceil(litresL / POURED_L - 1e-6) * POURED_L;
}

function usableOf({ capacityL, unusableL }: Pick<TankRecord, 'capacityL' | 'unusableL'>): number {
  return capacityL - unusableL;
}

/** A total in each tank, at most the usable fuel of all. */
function sharedBy(
  tanks: readonly TankRecord[],
  { burn }: ReviewTerms,
  split: FuelSplit,
  totalL: number,
): number[] {
  if (split === 'order') {
    const litres = tanks.map(() => 0);
    const places = tanks.map((_, i) => i);
    const turn = (i: number) => {
      const at = burn.tankIds.indexOf(tanks[i]?.id ?? '');
      return at < 0 ? Infinity : at;
    };
    let leftL = totalL;
    for (const i of places.sort((a, b) => turn(a) - turn(b) || a - b)) {
      const tank = tanks[i];
      const takesL = tank === undefined ? 0 : Math.min(leftL, usableOf(tank));
      litres[i] = takesL;
      leftL -= takesL;
    }
    return litres;
  }
  const all = tanks.reduce((sum, tank) => sum + usableOf(tank), 0);
  if (split === 'capacity') return tanks.map((tank) => (all > 0 ? (totalL * usableOf(tank)) / all : 0));
  // Level: the smallest tank is full first, and what it does not take is shared by those that are left.
  const rising = tanks
    .map((tank, i) => ({ i, usableL: usableOf(tank) }))
    .sort((a, b) => a.usableL - b.usableL);
  const litres = tanks.map(() => 0);
  let leftL = totalL;
  rising.forEach(({ i, usableL }, done) => {
    const takesL = Math.min(usableL, leftL / (rising.length - done));
    litres[i] = takesL;
    leftL -= takesL;
  });
  return litres;
}

/** An empty tank is known to be empty; no doubt reaches beyond empty or full. */
function withDoubt(tanks: readonly TankRecord[], litres: readonly number[], doubtL: number): Fuel {
  return tanks.map((tank, i) => {
    const bestL = litres[i] ?? 0;
    if (bestL === 0) return { tankId: tank.id, lowL: 0, bestL: 0, highL: 0 };
    return {
      tankId: tank.id,
      lowL: Math.max(0, bestL - doubtL),
      bestL,
      highL: Math.max(bestL, Math.min(usableOf(tank), bestL + doubtL)),
    };
  });
}
