import { InputProblem, requireRange } from '../../problem.ts';
import type { NumberRange } from '../../numeric/ranges-not-negative.ts';
import type { TankFuel } from '../case.ts';
import type { Asked } from './kept.ts';
import { keptRanges } from './kept-ranges.ts';
import { reserveOf } from '../reserve.ts';
import { Z_95 } from '../../numeric/z-95.ts';

/** How fuel is shared among tanks: litres in each for one litre in all, in the order of the aeroplane's tanks. */
export type FuelParts = readonly number[];

/**
 * Fuel quantities with which the whole flight keeps every limit and the reserve: a union of ranges of litres.
 *
 * A tank with a part of 0 keeps what it holds; the litres are those of the others, together. Low and high figures stay
 * as far from the best ones as the farther of them is now. A planned landing stays where it is.
 * @param parts none negative, adding up to 1
 * @throws InputProblem for other parts; RangeProblem, InputProblem as loadingModel
 */
export function fuelRanges(asked: Asked, parts: FuelParts): NumberRange[] {
  const mostL = mostLitres(asked, parts);
  return keptRanges({
    at: (litres) => withFuel(asked, parts, litres),
    from: 0,
    to: mostL,
    // Less at the start is less in every tank later on, of which two may stand for each other.
    kgPerUnit: 2 * densest(asked),
  });
}

/** The longest flight inside all limits, with the fuel that it takes. */
export interface LongestFlight {
  readonly litres: number;
  /** Latest landing, seconds after take-off, by the low figures of that fuel with the reserve kept. */
  readonly landByS: number;
}

/**
 * The longest flight that keeps every limit and the reserve, over all fuel quantities in these parts; landing is planned
 * for the last moment that keeps the reserve. null where no quantity will do.
 * @throws as fuelRanges
 */
export function longestFlight(asked: Asked, parts: FuelParts): LongestFlight | null {
  const at = (litres: number) => landingLast(withFuel(asked, parts, litres));
  const ranges = keptRanges({
    at,
    from: 0,
    to: mostLitres(asked, parts),
    // The landing moves along with the fuel besides.
    kgPerUnit: 4 * densest(asked),
  });
  const last = ranges.at(-1);
  if (last === undefined) return null;
  return { litres: last.to, landByS: at(last.to).loading.flight.landingAfterS ?? 0 };
}

/** The same loading with so many litres in these parts. */
export function withFuel(asked: Asked, parts: FuelParts, litres: number): Asked {
  const { aeroplane, loading } = asked;
  const fuel = aeroplane.tanks.map((tank, i): TankFuel => {
    const now = loading.fuel.find(({ tankId }) => tankId === tank.id) ?? none(tank.id);
    const part = parts[i] ?? 0;
    return part === 0 ? now : filled(now, part * litres, tank.capacityL - tank.unusableL);
  });
  // Fuel in a tank that is in no order would be forgotten.
  const added = fuel.flatMap(({ tankId, highL }) =>
    highL > 0 && !loading.burn.tankIds.includes(tankId) ? [tankId] : [],
  );
  const burn = { ...loading.burn, tankIds: [...loading.burn.tankIds, ...added] };
  return { ...asked, loading: { ...loading, fuel, burn } };
}

/** Litres when the first of the tanks that share is full. */
export function mostLitres({ aeroplane }: Asked, parts: FuelParts): number {
  if (parts.length !== aeroplane.tanks.length)
    throw new InputProblem('parts', `${String(aeroplane.tanks.length)} tanks take as many parts`);
  parts.forEach((part, i) => {
    requireRange(`parts[${String(i)}]`, part, 0, 1, '');
  });
  const sum = parts.reduce((a, b) => a + b, 0);
  if (Math.abs(sum - 1) > 1e-9) throw new InputProblem('parts', `they add up to ${String(sum)} instead of 1`);
  return Math.min(
    ...parts.flatMap((part, i) => {
      const tank = aeroplane.tanks[i];
      return part === 0 || tank === undefined ? [] : [(tank.capacityL - tank.unusableL) / part];
    }),
  );
}

/** A tank's figures round another best one: as doubtful as before, never beyond empty or full. */
function filled({ tankId, lowL, bestL, highL }: TankFuel, wantedL: number, usableL: number): TankFuel {
  const best = Math.min(wantedL, usableL);
  const doubtL = Math.max(bestL - lowL, highL - bestL);
  if (bestL === wantedL) return { tankId, lowL, bestL, highL };
  return { tankId, lowL: Math.max(0, best - doubtL), bestL: best, highL: Math.min(usableL, best + doubtL) };
}

function none(tankId: string): TankFuel {
  return { tankId, lowL: 0, bestL: 0, highL: 0 };
}

function landingLast(asked: Asked): Asked {
  const { fuel, flight } = asked.loading;
  const reserve = reserveOf({ fuel: [...fuel], flight: { ...flight, reserveMin: asked.reserveS / 60 } });
  const landingAfterS = Math.max(0, reserve?.landByS ?? 0);
  return { ...asked, loading: { ...asked.loading, flight: { ...flight, landingAfterS } } };
}

/** Of the heaviest fuel with which limits are compared, kg/L; 0 without tanks. */
export function densest({ aeroplane }: Asked): number {
  return Math.max(
    0,
    ...aeroplane.tanks.map((tank) => tank.densityKgPerL + Z_95 * (tank.densitySdKgPerL ?? 0)),
  );
}
