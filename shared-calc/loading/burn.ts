import { InputProblem, requireRange } from '../problem.ts';
import type { BurnOrder, FlightFuel } from './case.ts';

/** An order of burning and a flight, checked, with tanks by their index and times in seconds. */
export interface BurnPlan {
  readonly together: boolean;
  readonly order: readonly number[];
  /** Seconds between changes; Infinity where only an empty tank makes one. */
  readonly everyS: number;
  /** Tank that takes what the pump draws too much; -1 without a return line. */
  readonly returnInto: number;
  readonly pumpLPerS: number;
  readonly taxiL: number;
  readonly climbL: number;
  readonly climbLPerS: number;
  readonly cruiseLPerS: number;
  readonly landingS: number;
}

/**
 * Check an order of burning and the flight's fuel, and put both in seconds and tank indices.
 * @param tankIds ids of the aeroplane's tanks in their order
 * @param fuelled ids of those that have fuel: each has to be in the order, or its fuel would be forgotten
 * @throws RangeProblem, InputProblem
 */
export function burnPlan(
  burn: BurnOrder,
  flight: FlightFuel,
  tankIds: readonly string[],
  fuelled: readonly string[],
): BurnPlan {
  requireRange('flight.taxiL', flight.taxiL, 0, 1000, 'L');
  requireRange('flight.climbL', flight.climbL, 0, 1000, 'L');
  requireRange('flight.climbMin', flight.climbMin, 0, 600, 'min');
  requireRange('flight.cruiseLPerH', flight.cruiseLPerH, 0.1, 2000, 'L/h');
  if (flight.landingAfterS !== null)
    requireRange('flight.landingAfterS', flight.landingAfterS, 0, 172_800, 's');
  if (flight.climbL > 0 !== flight.climbMin > 0) {
    throw new InputProblem('flight.climbMin', 'fuel and minutes of the climb are given both or neither');
  }
  const order = burn.tankIds.map((id) => indexOf(id, tankIds, 'burn.tankIds'));
  const twice = burn.tankIds.find((id, i) => burn.tankIds.indexOf(id) !== i);
  if (twice !== undefined) throw new InputProblem('burn.tankIds', `${twice} is named twice`);
  const everyS = secondsBetweenChanges(burn);
  const cruiseLPerS = flight.cruiseLPerH / 3600;
  const climbLPerS = flight.climbL > 0 ? flight.climbL / (flight.climbMin * 60) : cruiseLPerS;
  let returnInto = -1;
  let pumpLPerS = 0;
  if (burn.returnLine !== null) {
    returnInto = indexOf(burn.returnLine.intoTankId, tankIds, 'burn.returnLine.intoTankId');
    const mostBurned = Math.max(cruiseLPerS, climbLPerS) * 3600;
    requireRange('burn.returnLine.pumpLPerH', burn.returnLine.pumpLPerH, mostBurned, 5000, 'L/h');
    pumpLPerS = burn.returnLine.pumpLPerH / 3600;
  }
  const needed = burn.returnLine === null ? fuelled : [...fuelled, burn.returnLine.intoTankId];
  const forgotten = needed.find((id) => !burn.tankIds.includes(id));
  if (forgotten !== undefined) {
    throw new InputProblem('burn.tankIds', `tank ${forgotten} has fuel but no place in the order of burning`);
  }
  return {
    together: burn.kind === 'together',
    order,
    everyS,
    returnInto,
    pumpLPerS,
    taxiL: flight.taxiL,
    climbL: flight.climbL,
    climbLPerS,
    cruiseLPerS,
    landingS: flight.landingAfterS ?? Infinity,
  };
}

function secondsBetweenChanges(burn: BurnOrder): number {
  if (burn.kind !== 'alternate') return Infinity;
  if (burn.everyMin === null)
    throw new InputProblem('burn.everyMin', 'say after how many minutes the tank is changed');
  requireRange('burn.everyMin', burn.everyMin, 1, 1440, 'min');
  return burn.everyMin * 60;
}

function indexOf(id: string, ids: readonly string[], field: string): number {
  const index = ids.indexOf(id);
  if (index < 0) throw new InputProblem(field, `there is no tank ${id}`);
  return index;
}
