import { magneticDirection } from '../../shared-calc/performance/direction.ts';
import { LIGHT_SPORT_LIMITS } from '../../shared-calc/performance/light-sport.ts';
import { performanceTable, readTable } from '../../shared-calc/performance/performance-table.ts';
import { gaggFerrarPowerRatio, speedRatioForMass } from '../../shared-calc/performance/power.ts';
import { factorChange } from '../../shared-calc/performance/published-factors.ts';
import type { FactorName } from '../../shared-calc/performance/published-factors.ts';
import { aboveStandardC, distanceSteps, noteChange } from '../../shared-calc/performance/runway-distances.ts';
import type { ManualNote, RunwayDistances } from '../../shared-calc/performance/runway-distances.ts';
import {
  groundRollWindRatio,
  widestAngleForCrosswindDeg,
  windComponents,
  windForCrosswindMs,
  windForHeadwindMs,
} from '../../shared-calc/performance/wind.ts';
import { convert, fromSi, toSi } from '../../shared-calc/units/convert.ts';
import { inputOf, publishedChecks } from './cases.ts';
import type { Actual, PublishedCase } from './cases.ts';

type PrintedRow = Record<string, { value: number; unit: string } | undefined>;

/** One column of a table printed against pressure altitude, in feet, read at the case's altitude; metres. */
function columnM(published: PublishedCase, column: string): number {
  const rows = published.inputs['table'] as PrintedRow[];
  const table = performanceTable(
    ['pressureAltitudeM'],
    rows.map((row) => ({
      at: { pressureAltitudeM: toSi(row['pressure_altitude']?.value ?? NaN, 'ft') },
      value: toSi(row[column]?.value ?? NaN, 'ft'),
    })),
  );
  const answer = readTable(table, { pressureAltitudeM: toSi(inputOf(published, 'pressure_altitude', 'ft'), 'ft') });
  return answer.kind === 'value' ? answer.value : NaN;
}

const HEADWIND_NOTE: ManualNote = {
  name: 'headwind',
  per: { of: 'headwindMs', amount: toSi(4, 'kt') },
  changeRatio: -0.1,
  shareOf: 'each',
};
const HEAT_NOTE: ManualNote = {
  name: 'above standard',
  per: { of: 'aboveStandardC', amount: convert(60, 'F deg', 'C deg') },
  changeRatio: 0.1,
  shareOf: 'each',
};

/** The landing table with its notes; the rules print their credit in full. */
function landing(published: PublishedCase, temperatureC: number | 'standard'): RunwayDistances {
  const start = { groundRollM: columnM(published, 'ground_roll'), overObstacleM: columnM(published, 'over_50ft') };
  const altitudeM = toSi(inputOf(published, 'pressure_altitude', 'ft'), 'ft');
  const headwindMs = toSi(inputOf(published, 'headwind', 'kt'), 'kt');
  const excessC = temperatureC === 'standard' ? 0 : aboveStandardC(temperatureC, altitudeM);
  const steps = distanceSteps(start, [
    noteChange(HEADWIND_NOTE, headwindMs, start, 'note 1'),
    noteChange(HEAT_NOTE, excessC, start, 'note 2'),
  ]);
  return steps.at(-1)?.distances ?? start;
}

function factorsOf(name: FactorName, amount: number): Actual {
  return {
    takeoff_factor: factorChange(name, 'takeOff', amount, []).factorRatio,
    landing_factor: factorChange(name, 'landing', amount, []).factorRatio,
  };
}

publishedChecks('performance', {
  'PERF-001': (published) => ({ ground_roll: fromSi(columnM(published, 'ground_roll'), 'ft') }),
  'PERF-002': (published) => ({ ground_roll: fromSi(landing(published, 'standard').groundRollM, 'ft') }),
  'PERF-003': (published) => ({ over_50ft: fromSi(landing(published, 'standard').overObstacleM, 'ft') }),
  'PERF-004': (published) => ({ ground_roll: fromSi(landing(published, toSi(101, 'degF')).groundRollM, 'ft') }),
  'PERF-005': (published) => ({ over_50ft: fromSi(landing(published, toSi(32, 'degF')).overObstacleM, 'ft') }),
  'PERF-006': (published) => {
    const wind = windComponents(
      magneticDirection(inputOf(published, 'runway_heading', 'deg')),
      magneticDirection(inputOf(published, 'wind_from', 'deg')),
      toSi(inputOf(published, 'wind_speed', 'kt'), 'kt'),
    );
    return { headwind: fromSi(wind.headwindMs, 'kt'), crosswind: fromSi(wind.crosswindFromRightMs, 'kt') };
  },
  'PERF-007': (published) => ({
    max_angle: widestAngleForCrosswindDeg(
      toSi(inputOf(published, 'wind_speed', 'kt'), 'kt'),
      toSi(inputOf(published, 'crosswind_limit', 'kt'), 'kt'),
    ),
  }),
  'PERF-008': (published) => {
    const angleDeg = inputOf(published, 'angle', 'deg');
    return {
      min_wind: fromSi(windForHeadwindMs(toSi(inputOf(published, 'min_headwind', 'kt'), 'kt'), angleDeg), 'kt'),
      max_wind: fromSi(windForCrosswindMs(toSi(inputOf(published, 'max_crosswind', 'kt'), 'kt'), angleDeg), 'kt'),
    };
  },
  'PERF-009': (published) => ({
    takeoff_distance_change:
      (groundRollWindRatio(inputOf(published, 'headwind_fraction_of_takeoff_speed', 'ratio')) - 1) * 100,
  }),
  'PERF-010': (published) => ({
    takeoff_speed_increase: (speedRatioForMass(1 + inputOf(published, 'weight_increase', '%') / 100) - 1) * 100,
  }),
  'PERF-011': () => factorsOf('weight', 0.1),
  'PERF-012': () => factorsOf('temperature', 10),
  'PERF-013': () => factorsOf('dryGrass', 1),
  'PERF-014': () => factorsOf('slope', 0.02),
  'PERF-015': () => factorsOf('tailwind', 0.1),
  'PERF-016': () => factorsOf('safety', 1),
  'PERF-017': (published) => ({
    power_ratio: gaggFerrarPowerRatio(inputOf(published, 'sigma', 'rho/rho0')),
  }),
  'PERF-018': () => ({
    max_weight_land: fromSi(LIGHT_SPORT_LIMITS.landMassKg, 'lb'),
    max_weight_water: fromSi(LIGHT_SPORT_LIMITS.waterMassKg, 'lb'),
    max_vs1: fromSi(LIGHT_SPORT_LIMITS.stallSpeedMs, 'kt'),
    max_vh: fromSi(LIGHT_SPORT_LIMITS.levelSpeedMs, 'kt'),
    max_seats: LIGHT_SPORT_LIMITS.seatCount,
  }),
});
