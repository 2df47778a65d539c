import type { Station } from './aeroplane.ts';
import type { LoadingResult } from './assess.ts';
import type { ChangeablePlace } from './changes-to-point.ts';
import { momentOfUsableKgM } from './tank-moment.ts';

/** A place of `changesToPoint` that is a tank: its changes are read in litres of so much each. */
export interface LoadedPlace extends ChangeablePlace {
  readonly densityKgPerL: number | null;
}

/**
 * Every station and tank with what it holds at take-off, ready for `changesToPoint`. A tank goes from empty at take-off to
 * full on the ramp, by its best figure; what is burned before take-off is taken to come from where it comes from now. A
 * seat on rails on which nobody sits has no arm yet and is left out.
 */
export function changeablePlaces({
  model,
  takeOff,
}: Pick<LoadingResult, 'model' | 'takeOff'>): LoadedPlace[] {
  const stations = model.aeroplane.stations.flatMap((station): LoadedPlace[] => {
    const loads = model.solids.filter(({ stationId }) => stationId === station.id);
    const loadedKg = loads.reduce((sum, { massKg }) => sum + massKg, 0);
    const { name, mostKg, arm } = station;
    const about = { name, loadedKg, mostKg, densityKgPerL: null };
    if (arm.kind === 'fixed') return [{ ...about, armM: arm.armM }];
    if (arm.kind === 'armTable') return [{ ...about, ...tableOf(arm, mostKg) }];
    // Whoever comes or goes sits where the seat stands.
    const [sitting] = loads;
    return sitting === undefined ? [] : [{ ...about, armM: sitting.armM }];
  });
  const tanks = model.aeroplane.tanks.flatMap(({ name, arm, densityKgPerL }, i): LoadedPlace[] => {
    const tank = model.tanks[i];
    if (tank === undefined) return [];
    const atTakeOffL = takeOff.contentsL[i] ?? 0;
    const roomL = tank.usableL - (model.fuel[i]?.bestL ?? 0);
    const about = {
      name,
      loadedKg: atTakeOffL * densityKgPerL,
      mostKg: (atTakeOffL + roomL) * densityKgPerL,
      densityKgPerL,
    };
    if (arm.kind === 'fixed') return [{ ...about, armM: arm.armM }];
    const momentKgM = (heldKg: number) =>
      momentOfUsableKgM(tank, Math.min(tank.usableL, Math.max(0, heldKg / densityKgPerL)));
    return [{ ...about, armM: 0, momentKgM }];
  });
  return [...stations, ...tanks];
}

/** Moment over mass by the manual's table of arms, from nothing to its last mass. */
function tableOf({ knots }: Extract<Station['arm'], { kind: 'armTable' }>, mostKg: number | null) {
  const lastKg = knots.at(-1)?.massKg ?? 0;
  const armAt = (heldKg: number) => {
    const next = Math.max(
      1,
      knots.findIndex(({ massKg }) => massKg >= heldKg),
    );
    const [a, b] = [knots[next - 1], knots[next]];
    if (a === undefined || b === undefined) return a?.armM ?? 0;
    return a.armM + ((b.armM - a.armM) * (heldKg - a.massKg)) / (b.massKg - a.massKg);
  };
  return {
    armM: 0,
    mostKg: Math.min(mostKg ?? lastKg, lastKg),
    momentKgM: (heldKg: number) => heldKg * armAt(heldKg),
  };
}
