import { createHash } from 'node:crypto';
import { z } from 'zod';
import type { LoadingInputs } from '../../shared-calc/loading/case-of.ts';
import type { FlightPoint } from '../../shared-calc/loading/point.ts';
import { UNIT_PRESETS } from '../../shared-calc/units/preferences.ts';
import { isOfCg } from '../../shared-calc/loading/limits.ts';
import { loadingReview } from '../../shared-calc/wording/loading-review.ts';
import { textOf } from '../../shared-calc/wording/parts.ts';
import { listLoadings } from '../store/loadings.ts';
import { readPeople } from '../store/people.ts';
import { readWeighings } from '../store/weighings.ts';
import { requireAircraft } from './aircraft.ts';
import { read, type Context } from './define.ts';
import { requireLoading } from './loading.ts';
import { id } from './ranges.ts';

const point = z.strictObject({
  massKg: z.number(),
  armM: z.number(),
  momentKgM: z.number(),
  macPercent: z.number().nullable(),
  lateralArmM: z.number().nullable(),
  afterTakeOffS: z.number(),
  burnedL: z.number(),
  usableL: z.number(),
});

const margin = z.strictObject({
  /** Which limit, and of which part: 'envelope.normal.aft', 'maxMass.landing'. */
  id: z.string(),
  met: z.boolean(),
  /** m for forward and aft, kg for every other; negative is outside. */
  marginM: z.number().nullable(),
  marginKg: z.number().nullable(),
  /** Where the margin is least; null for a limit of a place. */
  worst: point.nullable(),
  outside: z.array(z.strictObject({ fromS: z.number(), toS: z.number() })),
});

export const loadingReviewRequests = {
  'loading.verdicts': read({
    about:
      'The verdict on every loading of an aeroplane in short, with a mark of its own entries: a verdict that changes under the same mark was changed by the aeroplane or by somebody’s mass.',
    where: 'reader',
    input: z.strictObject({ aircraftId: id, units: z.enum(['metric', 'US']).default('metric') }),
    output: z.array(
      z.strictObject({
        id,
        name: z.string(),
        verdict: z.enum(['inside', 'outside', 'not checked']),
        inShort: z.string(),
        entriesMark: z.string(),
      }),
    ),
    handle: ({ db }, input) => {
      const rest = surroundings(db, input.aircraftId);
      return listLoadings(db, input.aircraftId).map(({ id: loadingId, name }) => {
        const inputs = { ...rest, loading: requireLoading(db, loadingId) };
        const { verdict, inShort } = loadingReview(inputs, UNIT_PRESETS[input.units]);
        const entriesMark = createHash('sha256').update(JSON.stringify(inputs.loading)).digest('base64url');
        return { id: loadingId, name, verdict, inShort, entriesMark };
      });
    },
  }),
  'loading.review': read({
    about:
      'The verdict on a loading in words (kg and mm unless told), and the figures behind it: points of the flight and the margin to each limit.',
    where: 'reader',
    input: z.strictObject({ loadingId: id, units: z.enum(['metric', 'US']).default('metric') }),
    output: z.strictObject({
      verdict: z.enum(['inside', 'outside', 'not checked']),
      sentence: z.string(),
      inShort: z.string(),
      restsOn: z.array(z.string()),
      ramp: point.nullable(),
      takeOff: point.nullable(),
      landing: point.nullable(),
      exhausted: point.nullable(),
      margins: z.array(margin),
      reserve: z.strictObject({ lastsS: z.number(), landByS: z.number(), kept: z.boolean() }).nullable(),
    }),
    handle: ({ db }, input) => {
      const review = loadingReview(loadingInputs(db, input.loadingId), UNIT_PRESETS[input.units]);
      const { result, reserve } = review;
      return {
        verdict: review.verdict,
        sentence: textOf(review.sentences),
        inShort: review.inShort,
        restsOn: [...review.restsOn],
        ramp: figures(result?.ramp),
        takeOff: figures(result?.takeOff),
        landing: figures(result?.landing),
        exhausted: figures(result?.exhausted),
        margins: (result?.margins ?? []).map((each) => {
          const isArm = isOfCg(each.limit);
          return {
            id: each.limit.id,
            met: each.met,
            marginM: isArm ? each.margin : null,
            marginKg: isArm ? null : each.margin,
            worst: figures(each.worst),
            outside: each.outside.map(({ fromS, toS }) => ({ fromS, toS })),
          };
        }),
        reserve:
          reserve === null ? null : { lastsS: reserve.lastsS, landByS: reserve.landByS, kept: reserve.kept },
      };
    },
  }),
};

/** All that a verdict on a loading rests on, read from the library. */
export function loadingInputs(db: Context['db'], loadingId: string): LoadingInputs {
  const loading = requireLoading(db, loadingId);
  return { ...surroundings(db, loading.aircraftId), loading };
}

/** What all loadings of an aeroplane rest on alike. */
function surroundings(db: Context['db'], aircraftId: string): Omit<LoadingInputs, 'loading'> {
  return {
    aircraft: requireAircraft(db, aircraftId),
    weighing: readWeighings(db, aircraftId).find((each) => !each.withdrawn) ?? null,
    people: readPeople(db, true).map(({ record }) => record),
  };
}

function figures(at: FlightPoint | null | undefined) {
  if (at === null || at === undefined) return null;
  const { massKg, armM, momentKgM, macPercent, lateralArmM, afterTakeOffS, burnedL, usableL } = at;
  return { massKg, armM, momentKgM, macPercent, lateralArmM, afterTakeOffS, burnedL, usableL };
}
