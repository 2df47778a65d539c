import type { Migration } from './define.ts';
import { settingsAndChanges } from './0010-settings-and-changes.ts';
import { notices } from './0015-notices.ts';
import { aircraft } from './0020-aircraft.ts';
import { peopleAndLoading } from './0030-people-and-loading.ts';
import { fuel } from './0040-fuel.ts';
import { weather } from './0050-weather.ts';
import { weatherMappings } from './0055-weather-mappings.ts';
import { bandedCurves } from './0060-banded-curves.ts';
import { fuelCards } from './0065-fuel-cards.ts';
import { performance } from './0070-performance.ts';
import { fuelChecks } from './0075-fuel-checks.ts';
import { importBatches } from './0080-import-batches.ts';
import { fillTestDetails } from './0085-fill-test-details.ts';
import { loadingByGauge } from './0086-loading-by-gauge.ts';
import { loadingSheets } from './0095-loading-sheets.ts';
import { reviewTables } from './0098-review-tables.ts';
import { lateralArmsAndFuelKinds } from './0100-lateral-arms-and-fuel-kinds.ts';
import { dividedMoments } from './0105-divided-moments.ts';
import { runwaySlope } from './0110-runway-slope.ts';
import { performanceEntry } from './0115-performance-entry.ts';
import { seenVerdicts } from './0130-seen-verdicts.ts';

/** Every migration in order. */
export const migrations: readonly Migration[] = [
  settingsAndChanges,
  notices,
  aircraft,
  peopleAndLoading,
  fuel,
  weather,
  weatherMappings,
  bandedCurves,
  fuelCards,
  performance,
  fuelChecks,
  importBatches,
  fillTestDetails,
  loadingByGauge,
  loadingSheets,
  reviewTables,
  lateralArmsAndFuelKinds,
  dividedMoments,
  runwaySlope,
  performanceEntry,
  seenVerdicts,
];
