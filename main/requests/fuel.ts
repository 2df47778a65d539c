import { z } from 'zod';
import { areAlike, calibrate } from '../../shared-calc/fuel/fit/calibrate.ts';
import type { RefillCheckRecord } from '../../shared-calc/fuel/checks/check-record.ts';
import { requireScale } from '../../shared-calc/fuel/gauge-scale.ts';
import { byHandOf, type ContainerRecord, type FillTestRecord } from '../../shared-calc/fuel/records.ts';
import { tooFewReadingsSentence } from '../../shared-calc/wording/fuel.ts';
import { appendCalibration, readCalibrations, setCalibrationWithdrawn } from '../store/calibrations.ts';
import { readRefits } from '../store/calibration-refits.ts';
import { readFuelChecks } from '../store/fuel-checks.ts';
import { readContainer, readContainers, writeContainer } from '../store/containers.ts';
import { readFillTest, readFillTests, writeFillTest } from '../store/fill-tests.ts';
import { requireTankOfAircraft } from '../store/tank-of.ts';
import { change, read, type Context } from './define.ts';
import { calibration, container, containerFields, fillTest, fillTestFields } from './fuel-schema.ts';
import { Refusal } from './problem.ts';
import { day, id, named } from './ranges.ts';

const areas: ('fuel' | 'loading')[] = ['fuel', 'loading'];
const screen = 'fuel' as const;

/** Counts up when a curve would come out differently from the same rows. */
const methodVersion = 4;

export const fuelRequests = {
  'fillTest.list': read({
    about: 'The fill tests of a tank with all their rows, the latest first.',
    where: 'reader',
    input: z.strictObject({ tankId: id }),
    output: z.array(fillTest),
    handle: ({ db }, { tankId }) => readFillTests(db, tankId),
  }),
  'fillTest.put': change({
    about: 'Add a fill test (without id) or change one: the whole test as it is to be. Gives its id.',
    input: z.strictObject({ test: fillTestFields.extend({ id: id.optional() }), named }),
    output: z.strictObject({ id }),
    handle: (context, input) => {
      const after: FillTestRecord = { ...input.test, id: input.test.id ?? context.newId() };
      const tank = requireTankOfAircraft(context.db, after.tankId);
      requireScale(after.scale);
      requireContainers(context, after);
      const before = readFillTest(context.db, after.id);
      writeFillTest(context.db, { record: after, removed: false });
      const old = before === null || before.removed ? null : before.record;
      return {
        output: { id: after.id },
        named:
          input.named ??
          (old === null ? `fill test of ${tank.name}` : `rows of the fill test of ${tank.name}`),
        screen,
        areas,
        inverse:
          old === null
            ? { request: 'fillTest.remove', input: { id: after.id } }
            : { request: 'fillTest.put', input: { test: old, named: input.named } },
        forward: { request: 'fillTest.put', input: { test: after, named: input.named } },
      };
    },
  }),
  'fillTest.remove': change({
    about: 'Take a fill test off the list; curves that were adopted from it stay.',
    input: z.strictObject({ id }),
    output: z.strictObject({}),
    handle: ({ db }, input) => {
      const test = requireTest({ db }, input.id);
      writeFillTest(db, { record: test, removed: true });
      return {
        output: {},
        named: `fill test of ${test.testedOn} removed`,
        screen,
        areas,
        inverse: { request: 'fillTest.put', input: { test } },
      };
    },
  }),

  'calibration.list': read({
    about: 'The adopted curves of a tank, the latest first; the first that is not withdrawn counts.',
    where: 'reader',
    input: z.strictObject({ tankId: id }),
    output: z.array(calibration),
    handle: ({ db }, { tankId }) =>
      readCalibrations(db, tankId).map((each) => ({
        ...each,
        curve:
          each.curve.method === 'logSlopeRefits'
            ? { ...each.curve, knots: [...each.curve.knots] }
            : { ...each.curve, knots: [...each.curve.knots] },
      })),
  }),
  'calibration.refits': read({
    about:
      'The curves behind an adopted band, with which differences and totals are judged; null for one adopted before they were kept.',
    where: 'reader',
    input: z.strictObject({ id }),
    output: z
      .strictObject({
        positionsRatio: z.array(z.number()),
        volumesL: z.array(z.array(z.number())),
        containerErrors: z.record(z.string(), z.array(z.number())),
      })
      .nullable(),
    handle: ({ db }, input) => {
      const kept = readRefits(db, input.id);
      return kept === null
        ? null
        : {
            positionsRatio: [...kept.positionsRatio],
            volumesL: kept.volumesL.map((each) => [...each]),
            containerErrors: Object.fromEntries(
              Object.entries(kept.containerErrors).map(([of, each]) => [of, [...each]]),
            ),
          };
    },
  }),
  'calibration.adopt': change({
    about:
      'Adopt the curve of fill tests that are alike, with checks as further data if wanted; it supersedes the last one, which stays.',
    input: z.strictObject({
      tankId: id,
      testIds: z.array(id).min(1).max(20),
      checkIds: z.array(id).max(100).default([]),
      adoptedOn: day,
    }),
    output: z.strictObject({ id }),
    handle: (context, input) => {
      const tank = requireTankOfAircraft(context.db, input.tankId);
      const tests = input.testIds.map((testId) => requireTest(context, testId));
      const first = requireAlike(tests, input.tankId);
      const containers = readContainers(context.db, true).map(({ record }) => record);
      const checks = requireChecks(context, input.checkIds, first);
      const fit = calibrate(tests, containers, tank, checks);
      if (fit.kind === 'tooFewReadings')
        throw new Refusal(
          'input-refused',
          `${tooFewReadingsSentence(fit.distinctCount, fit.neededCount)} Nothing was adopted.`,
        );
      const adopted = {
        id: context.newId(),
        tankId: input.tankId,
        testIds: input.testIds,
        checkIds: input.checkIds,
        adoptedOn: input.adoptedOn,
        methodVersion,
        scale: first.scale,
        curve: fit.curve,
        byHand: byHandOf(tests),
      };
      appendCalibration(context.db, adopted, fit.refits, context.nowEpochS());
      return {
        output: { id: adopted.id },
        named: `curve of ${tank.name} adopted`,
        screen,
        areas,
        inverse: { request: 'calibration.withdraw', input: { id: adopted.id } },
        // Never adopted twice: done again, the withdrawn one counts once more.
        forward: { request: 'calibration.reinstate', input: { id: adopted.id } },
      };
    },
  }),
  'calibration.withdraw': change({
    about: 'Withdraw an adopted curve; it stays readable and no longer counts.',
    input: z.strictObject({ id }),
    output: z.strictObject({}),
    handle: (context, input) => withdrawn(context, input.id, true),
  }),
  'calibration.reinstate': change({
    about: 'Let a withdrawn curve count again.',
    input: z.strictObject({ id }),
    output: z.strictObject({}),
    handle: (context, input) => withdrawn(context, input.id, false),
  }),

  'container.list': read({
    about: 'The containers that fuel is measured with; with those taken off the list, if asked.',
    where: 'reader',
    input: z.strictObject({ withRemoved: z.boolean().default(false) }),
    output: z.array(container.extend({ removed: z.boolean() })),
    handle: ({ db }, input) =>
      readContainers(db, input.withRemoved).map(({ record, removed }) => ({ ...record, removed })),
  }),
  'container.put': change({
    about: 'Add a container (without id) or change one. Gives its id.',
    input: z.strictObject({ container: containerFields.extend({ id: id.optional() }), named }),
    output: z.strictObject({ id }),
    handle: (context, input) => {
      const after: ContainerRecord = { ...input.container, id: input.container.id ?? context.newId() };
      const before = readContainer(context.db, after.id);
      writeContainer(context.db, { record: after, removed: false });
      const old = before === null || before.removed ? null : before.record;
      return {
        output: { id: after.id },
        named: input.named ?? (old === null ? `${after.name} added` : `figures of ${after.name}`),
        screen,
        areas,
        inverse:
          old === null
            ? { request: 'container.remove', input: { id: after.id } }
            : { request: 'container.put', input: { container: old, named: input.named } },
        forward: { request: 'container.put', input: { container: after, named: input.named } },
      };
    },
  }),
  'container.remove': change({
    about: 'Take a container off the list; the tests that name it keep it.',
    input: z.strictObject({ id }),
    output: z.strictObject({}),
    handle: ({ db }, input) => {
      const before = readContainer(db, input.id);
      if (before === null || before.removed)
        throw new Refusal('not-found', `There is no container '${input.id}'. Nothing was changed.`);
      writeContainer(db, { ...before, removed: true });
      return {
        output: {},
        named: `${before.record.name} removed`,
        screen,
        areas,
        inverse: { request: 'container.put', input: { container: before.record } },
      };
    },
  }),
};

function requireTest({ db }: Pick<Context, 'db'>, testId: string): FillTestRecord {
  const found = readFillTest(db, testId);
  if (found === null || found.removed)
    throw new Refusal('not-found', `There is no fill test '${testId}' in this library. Nothing was changed.`);
  return found.record;
}

/** Only tests alike make one curve, and of this tank. */
function requireAlike(tests: readonly FillTestRecord[], tankId: string): FillTestRecord {
  const first = tests[0];
  if (first === undefined) throw new Refusal('input-refused', 'A curve needs at least one fill test.');
  if (first.tankId !== tankId || !areAlike(tests))
    throw new Refusal(
      'input-refused',
      'These fill tests differ in tank, attitude, supply, fuel or scale, so they do not make one curve. Nothing was adopted.',
    );
  return first;
}

/** Checks of the same gauge, read as in the fill tests. */
function requireChecks(
  { db }: Context,
  checkIds: readonly string[],
  { tankId, attitude }: FillTestRecord,
): RefillCheckRecord[] {
  const found = readFuelChecks(db, tankId);
  return checkIds.map((checkId) => {
    const check = found.find((each) => each.id === checkId && !each.withdrawn);
    if (check === undefined)
      throw new Refusal('not-found', `There is no check '${checkId}' of this tank. Nothing was adopted.`);
    if (check.kind !== 'refill' || check.before.at !== 'scale' || check.after.at !== 'scale')
      throw new Refusal(
        'input-refused',
        `The check of ${check.checkedOn} has a reading at a stop and cannot be data of a curve. Nothing was adopted.`,
      );
    if (check.attitude !== attitude)
      throw new Refusal(
        'input-refused',
        `The check of ${check.checkedOn} was read in another attitude than the fill test. Nothing was adopted.`,
      );
    return check;
  });
}

function requireContainers({ db }: Context, test: FillTestRecord): void {
  for (const { containerId } of test.runs)
    if (containerId !== null && readContainer(db, containerId) === null)
      throw new Refusal('not-found', `There is no container '${containerId}'. Nothing was changed.`);
}

function withdrawn({ db }: Context, calibrationId: string, to: boolean) {
  const found = setCalibrationWithdrawn(db, calibrationId, to);
  if (found === null)
    throw new Refusal('not-found', `There is no adopted curve '${calibrationId}'. Nothing was changed.`);
  return {
    output: {},
    named: `curve of ${found.adoptedOn} ${to ? 'withdrawn' : 'reinstated'}`,
    screen,
    areas,
    inverse:
      found.before === to
        ? null
        : { request: to ? 'calibration.reinstate' : 'calibration.withdraw', input: { id: calibrationId } },
  };
}
