import type { WeatherFigure } from '../../../shared-calc/wording/weather-figure.ts';
import type { PlannedShare } from './planner.svelte.ts';
import type { TodayAir } from './readToday.ts';
import type { PendingFile } from './pendingFile.ts';

/** What stands beside the pictures. */
export type WeatherSide = 'hours' | 'today' | 'days' | 'weeks' | 'field' | 'files';

/** What the person finds again on coming back to this screen. */
export class WeatherState {
  /** Of days that are no worse. */
  share = $state<PlannedShare>(0.9);
  /** What the season picture draws: that share, the worst day, or how many days are beyond the limit. */
  view = $state<'share' | 'worst' | 'beyond'>('share');
  /** Hour of the clock in hand. */
  hour = $state(15);
  /** '2026-07-19'; null until one is chosen: then it is today, or the nearest month of the record. */
  date = $state<string | null>(null);
  figure = $state<WeatherFigure>('densityAltitude');
  /** What each figure may be at most (or at least), in the unit kept inside. */
  limits = $state<Partial<Record<WeatherFigure, number | null>>>({});
  /** What is observed this morning. */
  today = $state<TodayAir>({ hour: 8, temperatureC: null, dewPointC: null, settingHpa: null });
  side = $state<WeatherSide>('hours');
  pending = $state<PendingFile[]>([]);
  /** A field that is being typed in and is not in the library yet. */
  isAddingField = $state(false);
}
