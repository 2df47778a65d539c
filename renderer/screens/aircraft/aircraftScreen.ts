import { shown } from '../../../shared-calc/units/shown.ts';
import { query } from '../../app/query.svelte.ts';
import type { ScreenEntry } from '../../app/screens.ts';

export const aircraftScreen: ScreenEntry = {
  id: 'aircraft',
  word: 'Aircraft',
  sheet: () => import('./AircraftSheet.svelte'),
  answer: (app) => {
    const kept = query(
      app,
      'aircraft.get',
      () => (app.aeroplaneId === null ? null : { id: app.aeroplaneId }),
      ['aircraft'],
    );
    return () => {
      if (kept.answer === undefined) return 'none entered yet';
      const { weighings, currentWeighingId, aircraft } = kept.answer;
      const weighing = weighings.find(({ id }) => id === currentWeighingId);
      return weighing === undefined
        ? 'no empty weight yet'
        : `${shown(weighing.emptyMassKg, 'mass', aircraft.printed.mass)} empty`;
    };
  },
};
