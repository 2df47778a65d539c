import { query } from '../../app/query.svelte.ts';
import type { ScreenEntry } from '../../app/screens.ts';
import { changedVerdicts, watchVerdicts } from './verdictWatch.svelte.ts';

export const loadingScreen: ScreenEntry = {
  id: 'loading',
  word: 'Loading',
  sheet: () => import('./LoadingPlaces.svelte'),
  answer: (app) => {
    watchVerdicts(app);
    const changed = changedVerdicts(app);
    const list = query(
      app,
      'loading.list',
      () => (app.aeroplaneId === null ? null : { aircraftId: app.aeroplaneId }),
      ['loading', 'aircraft'],
    );
    const review = query(
      app,
      'loading.review',
      () =>
        list.answer?.currentId == null
          ? null
          : { loadingId: list.answer.currentId, units: app.units.of('mass') === 'lb' ? 'US' : 'metric' },
      ['loading', 'aircraft', 'people'],
    );
    const hasNone = () => list.answer?.loadings.length === 0 || app.aeroplanes.answer?.currentId === null;
    return () => {
      const now = review.answer?.inShort ?? (hasNone() ? 'none yet' : '');
      return changed.count === 0 ? now : `${now}; ${String(changed.count)} changed verdict`;
    };
  },
};
