import { checksDisagree } from '../../../shared-calc/wording/gauge-standing.ts';
import type { App } from '../../app/app.svelte.ts';
import { query } from '../../app/query.svelte.ts';

/** The fuel screen's answer in the index: which tank's gauge can no longer be believed, or has no curve yet. */
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
    // What could hurt stands before what is only missing.
    const [doubtful, ...more] = tanks.filter(({ checks }) => checksDisagree(checks));
    if (doubtful !== undefined) {
      if (tanks.length === 1) return 'checks no longer agree';
      return more.length === 0
        ? `${doubtful.name.toLowerCase()}: checks no longer agree`
        : `${String(1 + more.length)} gauges: checks no longer agree`;
    }
    const without = tanks.filter(({ adoptedOn }) => adoptedOn === null);
    if (without.length === 0) return tanks.length === 1 ? 'calibrated' : 'all tanks calibrated';
    const first = without[0];
    if (tanks.length > 1 && without.length === 1 && first !== undefined)
      return `${first.name.toLowerCase()}: no curve`;
    return tanks.length > 1 ? 'no curves yet' : 'no curve yet';
  };
}
