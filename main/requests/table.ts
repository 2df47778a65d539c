import type { z } from 'zod';
import { aircraftRequests } from './aircraft.ts';
import { airportRequests } from './airports.ts';
import type { AnyRequest } from './define.ts';
import { dipstickRequests } from './dipsticks.ts';
import { fuelCardRequests } from './fuel-cards.ts';
import { fuelCheckRequests } from './fuel-checks.ts';
import { gaugeStandingRequests } from './gauge-standing.ts';
import { fuelRequests } from './fuel.ts';
import { historyRequests } from './history.ts';
import { fieldRequests } from './fields.ts';
import type { HostTable } from './host.ts';
import { libraryRequests } from './library.ts';
import { loadingRequests } from './loading.ts';
import { loadingBackwardsRequests } from './loading-backwards.ts';
import { loadingSheetRequests } from './loading-sheets.ts';
import { loadingReviewRequests } from './loading-review.ts';
import { peopleRequests } from './people.ts';
import { reviewTableRequests } from './review-tables.ts';
import { seenVerdictRequests } from './seen-verdicts.ts';
import { performanceRequests } from './performance.ts';
import { settingsRequests } from './settings.ts';
import { weighingRequests } from './weighing.ts';
import { weatherDoubtfulRequests } from './weather-doubtful.ts';
import { weatherImportRequests } from './weather-import.ts';
import { weatherMappingRequests } from './weather-mapping.ts';
import { weatherPreviewRequests } from './weather-preview.ts';
import { weatherCoverageRequests } from './weather-coverage.ts';
import { weatherDayRequests } from './weather-day.ts';
import { weatherObservationRequests } from './weather-observations.ts';
import { weatherSeasonRequests } from './weather-season.ts';
import { plannerBackwardsRequests } from './planner-backwards.ts';
import { plannerCompareRequests } from './planner-compare.ts';
import { plannerHourRequests } from './planner-hour.ts';
import { plannerObstacleRequests } from './planner-obstacle.ts';
import { plannerWeekRequests } from './planner-weeks.ts';
import { plannerRequests } from './planner.ts';
import { weatherTodayRequests } from './weather-today.ts';
import { weatherYearRequests } from './weather-years.ts';
import { weatherRequests } from './weather.ts';

/**
 * Every request there is: the only door between the window (or a script) and the library.
 * Both hosts and `ask` serve just this table.
 */
export const requestTable = {
  ...libraryRequests,
  ...historyRequests,
  ...fuelRequests,
  ...gaugeStandingRequests,
  ...fuelCardRequests,
  ...fuelCheckRequests,
  ...dipstickRequests,
  ...settingsRequests,
  ...aircraftRequests,
  ...weighingRequests,
  ...performanceRequests,
  ...peopleRequests,
  ...loadingRequests,
  ...loadingReviewRequests,
  ...reviewTableRequests,
  ...seenVerdictRequests,
  ...loadingSheetRequests,
  ...loadingBackwardsRequests,
  ...fieldRequests,
  ...airportRequests,
  ...weatherRequests,
  ...weatherPreviewRequests,
  ...weatherImportRequests,
  ...weatherDoubtfulRequests,
  ...weatherCoverageRequests,
  ...weatherMappingRequests,
  ...weatherSeasonRequests,
  ...weatherDayRequests,
  ...weatherObservationRequests,
  ...weatherTodayRequests,
  ...weatherYearRequests,
  ...plannerRequests,
  ...plannerWeekRequests,
  ...plannerBackwardsRequests,
  ...plannerHourRequests,
  ...plannerObstacleRequests,
  ...plannerCompareRequests,
} satisfies Record<string, AnyRequest>;

export type RequestTable = typeof requestTable;
/** What a window may ask: the library's requests and the few that its host answers itself. */
type EveryRequest = RequestTable & HostTable;
export type RequestName = keyof EveryRequest;
/** What a caller may send. */
export type InputOf<N extends RequestName> = z.input<EveryRequest[N]['input']>;
/** What a caller gets back. */
export type OutputOf<N extends RequestName> = z.output<EveryRequest[N]['output']>;

export function findRequest(name: string): AnyRequest | undefined {
  return Object.hasOwn(requestTable, name) ? requestTable[name as keyof RequestTable] : undefined;
}
