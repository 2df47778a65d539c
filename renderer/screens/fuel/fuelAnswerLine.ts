import type { App } from '../../app/app.svelte.ts';
import { query } from '../../app/query.svelte.ts';

/** The fuel screen's answer in the index: which tank's gauge has no curve yet. */
export function fuelAnswerLine(app: App): () => string {
  const standing = query(
    app,
    'calibration.standing',
    () => (app.aeroplaneId === null ? null : { aircraftId: app.aeroplaneId }),
    ['fuel', 'aircraft'],
  );
  return () => {
    const tanks = standing.answer;
    if (tanks === undefined || tanks.length === 0) return 'no tank yet';
    const without = tanks.filter(({ adoptedOn }) => adoptedOn === null);
    if (without.length === 0) return tanks.length === 1 ? 'calibrated' : 'all tanks calibrated';
    const first = without[0];
    if (tanks.length > 1 && without.length === 1 && first !== undefined)
      return `${first.name.toLowerCase()}: no curve`;
    return tanks.length > 1 ? 'no curves yet' : 'no curve yet';
  };
}
