import { z } from 'zod';
import { rowsOfLimits } from '../../shared-calc/climate/departure/departure-limits.ts';
import { judge, LIMIT_NAMES } from '../../shared-calc/climate/departure/judge.ts';
import { daysOfHour } from '../../shared-calc/climate/departure/one-hour.ts';
import { planDeparture } from '../../shared-calc/climate/departure/plan-departure.ts';
import { rowsAround } from '../../shared-calc/climate/departure/rows-around.ts';
import { read } from './define.ts';
import { plannerInput, prepared } from './planner-prepared.ts';

export const plannerHourRequests = {
  'planner.hour': read({
    about:
      "The observations behind one hour of a planner's answer: each day with its air, wind, figures and what it fails.",
    where: 'heavy',
    input: plannerInput.extend({ hour: z.int().min(0).max(23) }),
    output: z.strictObject({
      days: z.array(
        z.strictObject({
          /** When the report was made, UTC. */
          epochS: z.number(),
          /** 'YYYY-MM-DD' by the field's clock. */
          day: z.string(),
          temperatureC: z.number().nullable(),
          dewPointC: z.number().nullable(),
          settingHpa: z.number().nullable(),
          densityAltitudeM: z.number().nullable(),
          /** null beside a speed: variable. */
          windFromDeg: z.number().nullable(),
          windMs: z.number().nullable(),
          gustMs: z.number().nullable(),
          /** null where not asked, or the manual answers nothing (then takeOff is among `fails`). */
          takeOffM: z.number().nullable(),
          isObserved: z.boolean(),
          fails: z.array(z.enum(LIMIT_NAMES)),
        }),
      ),
    }),
    handle: (context, input) => {
      const { hours, departure, limits } = prepared(context, input);
      const plan = planDeparture(hours, departure);
      const { place, air } = daysOfHour(
        hours,
        rowsAround(hours.localHour, departure.date),
        input.hour,
        plan.halfDays,
      );
      const rows = rowsOfLimits(air, departure.headingsDeg, limits);
      const { observed, failed } = judge(rows);
      const takeOff = rows.find(({ name }) => name === 'takeOff' || name === 'landing')?.value;
      const at = (column: Float64Array | undefined, row: number) => {
        const value = column?.[row] ?? NaN;
        return Number.isFinite(value) ? value : null;
      };
      return {
        days: [...place].map((each, row) => ({
          epochS: (hours.epochMinute[each] ?? 0) * 60,
          day: new Date(Math.floor((hours.localHour[each] ?? 0) / 24) * 86_400_000)
            .toISOString()
            .slice(0, 10),
          temperatureC: at(air.temperatureC, row),
          dewPointC: at(air.dewPointC, row),
          settingHpa: at(air.settingHpa, row),
          densityAltitudeM: at(air.densityAltitudeM, row),
          windFromDeg: at(air.windFromDeg, row),
          windMs: at(air.windMs, row),
          gustMs: at(air.gustMs, row),
          takeOffM: at(takeOff, row),
          isObserved: observed[row] === 1,
          fails: rows.flatMap(({ name }, index) => (((failed[row] ?? 0) & (1 << index)) !== 0 ? [name] : [])),
        })),
      };
    },
  }),
};
