import { distanceRows } from '../../shared-calc/climate/departure/aeroplane-rows.ts';
import type { HourColumns } from '../../shared-calc/climate/departure/air-rows.ts';
import { planDeparture, type DepartureQuestion } from '../../shared-calc/climate/departure/plan-departure.ts';
import { fieldDensityAltitudeM } from '../../shared-calc/climate/field-density-altitude.ts';
import { pressureAltitudeFromSettingM } from '../../shared-calc/atmosphere/station-pressure.ts';
import { performanceBook } from '../../shared-calc/performance/departure-book.ts';
import { distanceFigures } from '../../shared-calc/performance/departure-figures.ts';
import { trueDirection } from '../../shared-calc/performance/direction.ts';
import { windComponents } from '../../shared-calc/performance/wind.ts';
import { UNIT_PRESETS } from '../../shared-calc/units/preferences.ts';
import { plannerAnswer, plannerText } from '../../shared-calc/wording/planner.ts';
import { examplePerformance } from '../main/example-performance.ts';
import { beside, machineLine, seeded } from './measure.ts';

// The whole answer on a departure over a million hours of a record (114 years of them): take-off table, density altitude
// and crosswind judged together, 24 hours, a thousand drawings of years, windows, the rule to take along, and its words.
const ROWS = 1_000_000;
const ELEVATION_M = 300;
const random = seeded(9);
const firstHour = Date.UTC(1910, 0, 1) / 3_600_000;
const column = (of: (i: number) => number) => Float64Array.from({ length: ROWS }, (_, i) => of(i));
const temperatureC = column(
  (i) =>
    12 +
    10 * Math.sin((2 * Math.PI * (i / 24 - 105)) / 365.25) +
    6 * Math.sin((2 * Math.PI * ((i % 24) - 9)) / 24) +
    8 * (random() - 0.5),
);
const dewPointC = temperatureC.map((each) => each - 2 - 12 * random());
const settingHpa = column(() => 1000 + 30 * random());
const record: HourColumns = {
  localHour: Int32Array.from({ length: ROWS }, (_, i) => firstHour + i),
  temperatureC,
  dewPointC,
  settingHpa,
  densityAltitudeM: column((i) =>
    fieldDensityAltitudeM(
      {
        temperatureC: temperatureC[i] ?? NaN,
        dewPointC: dewPointC[i] ?? NaN,
        altimeterSettingHpa: settingHpa[i] ?? NaN,
        stationPressureHpa: NaN,
        seaLevelPressureHpa: NaN,
      },
      ELEVATION_M,
      ELEVATION_M,
    ),
  ),
  windFromDeg: column(() => 10 * Math.floor(36 * random())),
  windMs: column(() => 7 * random() ** 2),
  gustMs: column((i) => (i % 4 === 0 ? 6 + 6 * random() : NaN)),
};
const book = performanceBook(examplePerformance('bench'), { bestGlideMs: 28, bestGlideRatio: 9 });
const runway = { availableM: 700, surface: 'paved', slopeRatio: 0 } as const;
const MASS_KG = 600;
const DENSITY_ALTITUDE_MOST_M = 1400;
const CROSSWIND_MOST_MS = 7;
const HEADING_DEG = 250;
const question: DepartureQuestion = {
  date: { month: 7, day: 19 },
  share: 0.9,
  elevationM: ELEVATION_M,
  headingsDeg: [HEADING_DEG],
  limits: {
    densityAltitudeMostM: DENSITY_ALTITUDE_MOST_M,
    takeOff: {
      mostM: 700,
      distanceM: distanceRows({ book, massKg: MASS_KG, elevationM: ELEVATION_M }, 'takeOff', [runway]),
    },
    landing: null,
    climbRate: null,
    climbGradient: null,
    crosswindMostMs: CROSSWIND_MOST_MS,
    tailwindMostMs: null,
    gustMostMs: null,
  },
  daylight: { fromH: 5.5, toH: 20.5, isAllDay: false },
  times: { fromH: 5.5, toH: 18 },
  steps: {
    temperaturesC: Array.from({ length: 101 }, (_, i) => i - 45),
    settingsHpa: Array.from({ length: 111 }, (_, i) => 950 + i),
  },
};

console.log(machineLine());
beside(
  'planner: the full answer, joint limits, take-off table, 24 hours, resampled interval, at a million hours',
  ROWS,
  () => {
    const plan = planDeparture(record, question);
    return plannerText(
      plannerAnswer({
        plan,
        share: question.share,
        isObserved: true,
        daylight: question.daylight,
        rule: { rule: 'sunset' },
        times: question.times,
        flight: { phase: 'take-off', flightS: 5400, reserveS: 2700 },
        units: UNIT_PRESETS.metric,
      }),
    );
  },
  {
    // As a script would: every row looked at with its date, those near the date worked through one by one. Counts alone,
    // without interval, windows or rule.
    name: 'counting the same days row by row with single answers',
    run: () => {
      const days = new Array<number>(24).fill(0);
      const met = new Array<number>(24).fill(0);
      for (let row = 0; row < ROWS; row++) {
        const at = new Date((record.localHour[row] ?? 0) * 3_600_000);
        const centre = Date.UTC(at.getUTCFullYear(), 6, 19);
        if (Math.abs(Math.floor((at.getTime() - centre) / 86_400_000)) > 7) continue;
        const hour = at.getUTCHours();
        const fromDeg = record.windFromDeg[row] ?? NaN;
        const meanMs = record.windMs[row] ?? NaN;
        const gustMs = Math.max(meanMs, record.gustMs[row] || 0);
        const wind = windComponents(trueDirection(HEADING_DEG), trueDirection(fromDeg), gustMs);
        const mean = windComponents(trueDirection(HEADING_DEG), trueDirection(fromDeg), meanMs);
        const { requiredM } = distanceFigures(book, 'takeOff', {
          massKg: MASS_KG,
          pressureAltitudeM: pressureAltitudeFromSettingM(record.settingHpa[row] ?? NaN, ELEVATION_M),
          temperatureC: record.temperatureC[row] ?? NaN,
          dewPointC: record.dewPointC[row] ?? NaN,
          headwindMs: wind.headwindMs < 0 ? wind.headwindMs : mean.headwindMs,
          runway,
        });
        days[hour] = (days[hour] ?? 0) + 1;
        if (
          requiredM * 1.08 <= 700 &&
          (record.densityAltitudeM[row] ?? NaN) <= DENSITY_ALTITUDE_MOST_M &&
          Math.abs(wind.crosswindFromRightMs) <= CROSSWIND_MOST_MS
        )
          met[hour] = (met[hour] ?? 0) + 1;
      }
      return met.map((each, hour) => each / (days[hour] ?? NaN));
    },
  },
);
