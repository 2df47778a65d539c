import { z } from 'zod';
import type { FuelCheckRecord } from '../../shared-calc/fuel/checks/check-record.ts';
import { readContainer } from '../store/containers.ts';
import { appendFuelCheck, readFuelChecks, setFuelCheckWithdrawn } from '../store/fuel-checks.ts';
import { requireTankOfAircraft } from '../store/tank-of.ts';
import { change, read, type Context } from './define.ts';
import { fuelCheck, fuelCheckFields } from './fuel-schema.ts';
import { Refusal } from './problem.ts';
import { id } from './ranges.ts';

export const fuelCheckRequests = {
  'fuelCheck.list': read({
    about: "The checks of a tank's gauge, the latest first: refills after flights, and readings at its zero.",
    where: 'reader',
    input: z.strictObject({ tankId: id }),
    output: z.array(fuelCheck),
    handle: ({ db }, { tankId }) => readFuelChecks(db, tankId),
  }),
  'fuelCheck.record': change({
    about:
      "Log a check of a tank's gauge: a refill after a flight, or the reading with no usable fuel left. Gives its id.",
    input: z.strictObject({ check: fuelCheckFields }),
    output: z.strictObject({ id }),
    handle: (context, { check }) => {
      const tank = requireTankOfAircraft(context.db, check.tankId);
      requireSense(context, check, tank.capacityL);
      const recorded: FuelCheckRecord = { ...check, id: context.newId(), withdrawn: false };
      appendFuelCheck(context.db, recorded, context.nowEpochS());
      return {
        output: { id: recorded.id },
        named: `check of ${check.checkedOn} logged`,
        screen: 'fuel',
        areas: ['fuel'],
        inverse: { request: 'fuelCheck.withdraw', input: { id: recorded.id } },
        // Never logged twice: done again, the withdrawn one counts once more.
        forward: { request: 'fuelCheck.reinstate', input: { id: recorded.id } },
      };
    },
  }),
  'fuelCheck.withdraw': change({
    about: 'Withdraw a check; it stays readable and no longer counts.',
    input: z.strictObject({ id }),
    output: z.strictObject({}),
    handle: (context, input) => withdrawn(context, input.id, true),
  }),
  'fuelCheck.reinstate': change({
    about: 'Let a withdrawn check count again.',
    input: z.strictObject({ id }),
    output: z.strictObject({}),
    handle: (context, input) => withdrawn(context, input.id, false),
  }),
};

function requireSense({ db }: Context, check: z.output<typeof fuelCheckFields>, capacityL: number): void {
  if (check.kind === 'zero') return;
  if (check.containerId !== null && readContainer(db, check.containerId) === null)
    throw new Refusal('not-found', `There is no container '${check.containerId}'. Nothing was changed.`);
  if (check.refillL > capacityL)
    throw new Refusal(
      'input-refused',
      `refillL is ${String(check.refillL)} L; the tank holds ${String(capacityL)} L. Nothing was changed.`,
    );
}

function withdrawn({ db }: Context, checkId: string, to: boolean) {
  const found = setFuelCheckWithdrawn(db, checkId, to);
  if (found === null) throw new Refusal('not-found', `There is no check '${checkId}'. Nothing was changed.`);
  return {
    output: {},
    named: `check of ${found.checkedOn} ${to ? 'withdrawn' : 'reinstated'}`,
    screen: 'fuel' as const,
    areas: ['fuel' as const],
    inverse:
      found.before === to
        ? null
        : { request: to ? 'fuelCheck.reinstate' : 'fuelCheck.withdraw', input: { id: checkId } },
  };
}
