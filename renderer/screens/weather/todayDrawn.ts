import type { OutputOf } from '../../../main/requests/table.ts';

/** Today's observation on the day's picture, with the band of the days that began alike. */
export type TodayDrawn = OutputOf<'weather.restOfDay'>;
