import { z } from 'zod';
import { pressureAltitudeFromSettingM } from '../../shared-calc/atmosphere/station-pressure.ts';
import { daysNeeded } from '../../shared-calc/climate/days-needed.ts';
import type { AirRows } from '../../shared-calc/climate/departure/air-rows.ts';
import { daysOfHour } from '../../shared-calc/climate/departure/one-hour.ts';
import { planDeparture } from '../../shared-calc/climate/departure/plan-departure.ts';
import { rowsAround } from '../../shared-calc/climate/departure/rows-around.ts';
import { EITHER_END, runwayWind } from '../../shared-calc/climate/departure/runway-wind.ts';
import { quantilesOf } from '../../shared-calc/climate/quantile.ts';
import { probBelow } from '../../shared-calc/climate/safe-side.ts';
import { Z_95 } from '../../shared-calc/numeric/z-95.ts';
import { climbNumbers, climbReader } from '../../shared-calc/performance/climb-reader.ts';
import { distanceFigures } from '../../shared-calc/performance/departure-figures.ts';
import type { RunwayCase } from '../../shared-calc/performance/distance-reader.ts';
import { overObstacle, type ObstacleAhead } from '../../shared-calc/performance/obstacle.ts';
import { daysOverSentence, OBSTACLE_CAUTION } from '../../shared-calc/wording/planner-obstacle.ts';
import { read } from './define.ts';
import { answersGradient, type AskedAeroplane } from './planner-aeroplane.ts';
import { plannerInput, prepared } from './planner-prepared.ts';
import { headingsOf, runwayCases } from './planner-runway.ts';
import { Refusal } from './problem.ts';

export const plannerObstacleRequests = {
  'planner.obstacle': read({
    about:
      'On how many of the days of one hour the climb after take-off clears an obstacle straight ahead, beyond the end of the runway: an estimate.',
    where: 'heavy',
    input: plannerInput.extend({
      hour: z.int().min(0).max(23),
      obstacle: z.strictObject({
        /** From the end of the runway. */
        beyondEndM: z.number().min(0).max(10_000),
        /** Above the runway. */
        heightM: z.number().min(0).max(1000),
        /** Wished above the obstacle. */
        clearanceM: z.number().min(0).max(300),
      }),
    }),
    output: z.strictObject({
      sentence: z.string(),
      caution: z.string(),
      dayCount: z.int(),
      clearCount: z.int(),
      /** Days on which 50 ft are reached only behind it. */
      nearerCount: z.int(),
      /** Above obstacle and clearance, at least so much on the share of days asked; null where nothing can be said. */
      marginM: z.number().nullable(),
    }),
    handle: (context, input) => {
      const { hours, asked, departure, daylight } = prepared(context, input);
      const { aeroplane, runway, phase } = asked;
      if (phase === 'landing') throw new Refusal('input-refused', 'An obstacle is asked of a take-off.');
      if (!hours.isObserved || daylight === null)
        throw new Refusal('input-refused', 'Without days of daylight that were observed there is no answer.');
      const surface = aeroplane?.surface ?? null;
      if (
        aeroplane === null ||
        runway === null ||
        surface === null ||
        aeroplane.book.takeOff?.overObstacle == null
      )
        throw new Refusal(
          'not-found',
          'A take-off table with the distance over 50 ft, a loading and a runway of a known surface are needed.',
        );
      if (!answersGradient(aeroplane, runway))
        throw new Refusal(
          'not-found',
          'A climb table with its speed in every row is needed. Enter it in Aircraft.',
        );
      const plan = planDeparture(hours, departure);
      const rows = rowsAround(hours.localHour, departure.date);
      const { air } = daysOfHour(hours, rows, input.hour, plan.halfDays);
      const margins = marginsOver(
        air,
        asked.field.elevationM,
        aeroplane,
        headingsOf(runway),
        runwayCases(runway, 'take-off', surface),
        {
          fromStartM: runway.record.lengthM + input.obstacle.beyondEndM,
          heightM: input.obstacle.heightM,
          clearanceM: input.obstacle.clearanceM,
        },
      );
      const marginM =
        margins.length < daysNeeded(asked.share)
          ? null
          : (quantilesOf(
              Float64Array.from(margins, ({ marginM: each }) => each),
              [probBelow(asked.share, 'down')],
            )[0] ?? null);
      const counts = {
        dayCount: margins.length,
        clearCount: margins.filter((each) => each.marginM >= 0).length,
        nearerCount: margins.filter(({ isNearer }) => isNearer).length,
      };
      return {
        sentence: daysOverSentence({
          hour: input.hour,
          share: asked.share,
          clearanceM: input.obstacle.clearanceM,
          marginM,
          daysNeeded: daysNeeded(asked.share),
          ...counts,
          units: input.units,
        }),
        caution: OBSTACLE_CAUTION,
        ...counts,
        marginM: marginM !== null && Number.isFinite(marginM) ? marginM : null,
      };
    },
  }),
};

/**
 * What is left above the obstacle on each day that has air and wind; minus infinity where the manual answers nothing or
 * 50 ft are reached only behind it. Distance and gradient carry the spread of their reading, and where the wind does not
 * say which end is used the worse one counts.
 */
function marginsOver(
  air: AirRows,
  elevationM: number,
  { book, massKg }: AskedAeroplane,
  headingsDeg: readonly number[],
  ends: readonly RunwayCase[],
  obstacle: ObstacleAhead,
): { marginM: number; isNearer: boolean }[] {
  const wind = runwayWind(air, headingsDeg);
  const climbing = climbReader(book);
  const out = climbNumbers();
  const found: { marginM: number; isNearer: boolean }[] = [];
  for (let row = 0; row < air.settingHpa.length; row++) {
    const [settingHpa, temperatureC] = [air.settingHpa[row] ?? NaN, air.temperatureC[row] ?? NaN];
    const [dewPointC, headwindMs] = [air.dewPointC[row] ?? NaN, wind.headwindMs[row] ?? NaN];
    if (Number.isNaN(settingHpa + temperatureC + headwindMs)) continue;
    const pressureAltitudeM = pressureAltitudeFromSettingM(settingHpa, elevationM);
    const climb = climbing.read(out, massKg, pressureAltitudeM, temperatureC, dewPointC, headwindMs);
    const gradientRatio =
      climb.gradientRatio * (climb.gradientRatio > 0 ? 1 - Z_95 * climbing.readingSdRatio : 1);
    let worst = { marginM: Infinity, isNearer: false };
    ends.forEach((runway, end) => {
      if (wind.end[row] !== EITHER_END && wind.end[row] !== end) return;
      const takeOff = distanceFigures(book, 'takeOff', {
        massKg,
        pressureAltitudeM,
        temperatureC,
        dewPointC: Number.isNaN(dewPointC) ? null : dewPointC,
        headwindMs,
        runway,
      });
      const spread = 1 + Z_95 * takeOff.readingSdRatio;
      const answer = overObstacle(
        { ...takeOff, overObstacleM: takeOff.overObstacleM * spread },
        { ...climb, gradientRatio },
        obstacle,
      );
      const marginM = answer.kind === 'height' ? answer.marginM : -Infinity;
      if (marginM < worst.marginM) worst = { marginM, isNearer: answer.kind === 'nearerThan50Ft' };
    });
    if (worst.marginM < Infinity) found.push(worst);
  }
  return found;
}
