import type Database from 'better-sqlite3';
import { Refusal } from '../requests/problem.ts';

/** What fuel needs to know of a tank. */
export interface TankFigures {
  name: string;
  /** All that it holds, the unusable included. */
  capacityL: number;
  unusableL: number;
}

/** @throws Refusal where there is no such tank, or it or its aeroplane was removed */
export function requireTankOfAircraft(db: Database.Database, tankId: string): TankFigures {
  const tank = db
    .prepare<[string], TankFigures>(
      `SELECT tank.name, tank.capacity_l AS capacityL, tank.unusable_l AS unusableL
       FROM tank JOIN aircraft ON aircraft.id = tank.aircraft_id
       WHERE tank.id = ? AND tank.removed = 0 AND aircraft.removed = 0`,
    )
    .get(tankId);
  if (tank === undefined)
    throw new Refusal('not-found', `There is no tank '${tankId}' in this library. Nothing was changed.`);
  return tank;
}
