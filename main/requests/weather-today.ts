import { z } from 'zod';
import {
  hindcast,
  restOfDay,
  type CourseOfDay,
  type Hindcast,
} from '../../shared-calc/climate/days-alike.ts';
import { rowsAround } from '../../shared-calc/climate/departure/rows-around.ts';
import { fieldDensityAltitudeM } from '../../shared-calc/climate/field-density-altitude.ts';
import { HOURS } from '../../shared-calc/climate/season.ts';
import { read } from './define.ts';
import { fieldHours, type FieldHours } from './field-record.ts';
import { Refusal } from './problem.ts';
import { day, id } from './ranges.ts';

const settingHpa = z.number().min(850).max(1100);

export const weatherTodayRequests = {
  'weather.restOfDay': read({
    about:
      'How the rest of a day may go from an observation of its morning: the days of the record that began alike, and how well that held on years left out.',
    where: 'heavy',
    input: z.strictObject({
      fieldId: id,
      date: day,
      figure: z.enum(['densityAltitude', 'temperature']).default('densityAltitude'),
      /** Nearest full hour of the field's clock. */
      hour: z.int().min(0).max(22),
      temperatureC: z.number().min(-45).max(60),
      dewPointC: z.number().min(-45).max(60),
      settingHpa,
    }),
    output: z.strictObject({
      figure: z.enum(['densityAltitude', 'temperature']),
      hour: z.int(),
      /** From today's air, in m or degC. */
      today: z.number(),
      candidateCount: z.int(),
      alikeCount: z.int(),
      /** Nine in ten of the days that began alike lie within these; null with too few candidates. */
      within: z
        .strictObject({ temperatureC: z.number(), dewPointC: z.number(), settingHpa: z.number() })
        .nullable(),
      /** Of the candidates, those whose figure at the hour was at most today's. */
      atMostCount: z.int(),
      /** From `hour` to 23: eight days in ten between low and high. */
      hours: z.array(z.strictObject({ low: z.number(), median: z.number(), high: z.number() }).nullable()),
      check: z
        .strictObject({
          testCount: z.int(),
          heldShare: z.number(),
          widthRatio: z.number(),
          isTrusted: z.boolean(),
        })
        .nullable(),
    }),
    handle: ({ db }, input) => {
      const hours = fieldHours(db, input.fieldId);
      if (!hours.isObserved)
        throw new Refusal(
          'input-refused',
          'A typical year, averages or a model has no days that began alike.',
        );
      if (input.dewPointC > input.temperatureC + 0.05)
        throw new Refusal('input-refused', 'The dew point is above the temperature: check both.');
      const now = {
        temperatureC: input.temperatureC,
        dewPointC: Math.min(input.dewPointC, input.temperatureC),
        settingHpa: input.settingHpa,
      };
      const today =
        input.figure === 'temperature'
          ? now.temperatureC
          : fieldDensityAltitudeM(
              {
                ...now,
                altimeterSettingHpa: now.settingHpa,
                stationPressureHpa: NaN,
                seaLevelPressureHpa: NaN,
              },
              hours.field.elevationM,
              hours.field.elevationM,
            );
      const candidates = candidatesOf(hours, input);
      const rest = restOfDay(candidates, now, today);
      return {
        figure: input.figure,
        hour: input.hour,
        today,
        candidateCount: candidates.length,
        alikeCount: rest?.alikeCount ?? 0,
        within: rest?.within ?? null,
        atMostCount: candidates.filter(({ figure }) => (figure[0] ?? NaN) <= today).length,
        hours: [...(rest?.hours ?? [])],
        check: checkOf(hours, input, candidates),
      };
    },
  }),
};

interface Asked {
  date: string;
  figure: 'densityAltitude' | 'temperature';
  hour: number;
}

/** Days within three weeks of the date that have a report at the hour. */
function candidatesOf(hours: FieldHours, { date, figure, hour }: Asked): CourseOfDay[] {
  const [, month = 1, dayOfMonth = 1] = date.split('-').map(Number);
  const values = figure === 'temperature' ? hours.temperatureC : hours.densityAltitudeM;
  const rows = rowsAround(hours.localHour, { month, day: dayOfMonth });
  const courses: CourseOfDay[] = [];
  let current: { localDay: number; course: CourseOfDay } | null = null;
  rows.place.forEach((place, row) => {
    const localDay = Math.floor((hours.localHour[place] ?? 0) / HOURS);
    const at = rows.hour[row] ?? 0;
    const value = values[place] ?? NaN;
    if (at === hour && !Number.isNaN(value)) {
      const course = {
        year: rows.year[row] ?? 0,
        daysOff: rows.daysOff[row] ?? 0,
        air: {
          temperatureC: hours.temperatureC[place] ?? NaN,
          dewPointC: hours.dewPointC[place] ?? NaN,
          settingHpa: hours.settingHpa[place] ?? NaN,
        },
        figure: new Float64Array(HOURS - hour).fill(NaN),
      };
      // A setting out of range leaves no density altitude, but a temperature.
      if (Number.isNaN(course.air.settingHpa)) return;
      course.figure[0] = value;
      current = { localDay, course };
      courses.push(course);
    } else if (at > hour && current?.localDay === localDay) current.course.figure[at - hour] = value;
  });
  return courses;
}

/** The check rests on the record alone: another morning's air must not make it again. */
const lastCheck = new WeakMap<object, { key: string; check: Hindcast | null }>();

function checkOf(
  hours: FieldHours,
  { date, figure, hour }: Asked,
  candidates: CourseOfDay[],
): Hindcast | null {
  const key = JSON.stringify([date.slice(5), figure, hour]);
  const before = lastCheck.get(hours.localHour);
  if (before?.key === key) return before.check;
  const check = hindcast(candidates);
  lastCheck.set(hours.localHour, { key, check });
  return check;
}
