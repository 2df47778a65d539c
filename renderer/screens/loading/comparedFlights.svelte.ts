import { loadingReview } from '../../../shared-calc/wording/loading-review.ts';
import type { LoadingInputs } from '../../../shared-calc/loading/case-of.ts';
import type { LoadingRecord } from '../../../shared-calc/loading/records.ts';
import type { UnitPreferences } from '../../../shared-calc/units/preferences.ts';
import type { App } from '../../app/app.svelte.ts';
import type { PlotPoint } from './coordinates.ts';
import { flightLine } from './flightDrawing.ts';

/** Four flights in one plot are as many as dashes tell apart: the one in hand and three more. */
export const mostCompared = 3;

/** Which loadings are drawn beside the one in hand, in the order in which they were chosen. */
export class Compared {
  ids = $state.raw<readonly string[]>([]);

  add(id: string): void {
    this.ids = [...this.ids.filter((each) => each !== id), id].slice(-mostCompared);
  }

  leave(id: string): void {
    this.ids = this.ids.filter((each) => each !== id);
  }
}

export function compared(app: App): Compared {
  return app.kept('loading.compared', () => new Compared());
}

/** A compared loading as it is named and drawn: its flight and whether it is inside. */
export interface ComparedFlight {
  id: string;
  name: string;
  inShort: string;
  points: PlotPoint[];
}

export function comparedFlights(
  records: readonly LoadingRecord[],
  others: Omit<LoadingInputs, 'loading'>,
  units: UnitPreferences,
  place: (massKg: number, momentKgM: number) => number,
): ComparedFlight[] {
  return records.map((loading) => {
    const { result, inShort } = loadingReview({ ...others, loading }, units);
    const points = result === null ? [] : flightLine(result, place);
    return { id: loading.id, name: loading.name, inShort, points };
  });
}
