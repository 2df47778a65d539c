import { z } from 'zod';
import { hasCalibration } from '../store/calibrations.ts';
import { appendFuelCard, readFuelCards, setFuelCardWithdrawn } from '../store/fuel-cards.ts';
import { change, read, type Context } from './define.ts';
import { cardReading, fuelCard, serial } from './fuel-schema.ts';
import { Refusal } from './problem.ts';
import { day, id } from './ranges.ts';

export const fuelCardRequests = {
  'fuelCard.list': read({
    about: 'The fuel cards printed for a tank, the latest first, with the curve behind each.',
    where: 'reader',
    input: z.strictObject({ tankId: id }),
    output: z.array(fuelCard),
    handle: ({ db }, { tankId }) => readFuelCards(db, tankId),
  }),
  'fuelCard.record': change({
    about: 'Record that a fuel card is printed from an adopted curve. Gives the serial that it carries.',
    input: z.strictObject({ calibrationId: id, printedOn: day, reading: cardReading }),
    output: z.strictObject({ serial }),
    handle: ({ db }, input) => {
      if (!hasCalibration(db, input.calibrationId))
        throw new Refusal(
          'not-found',
          `There is no adopted curve '${input.calibrationId}'. Nothing was changed.`,
        );
      const given = appendFuelCard(db, input);
      return {
        output: { serial: given },
        named: `fuel card ${String(given)} recorded`,
        screen: 'fuel',
        areas: ['fuel'],
        inverse: { request: 'fuelCard.withdraw', input: { serial: given } },
        // Never recorded twice: done again, the withdrawn one counts once more.
        forward: { request: 'fuelCard.reinstate', input: { serial: given } },
      };
    },
  }),
  'fuelCard.withdraw': change({
    about: 'Withdraw a printed card, as when it was never cut out; its serial is not used again.',
    input: z.strictObject({ serial }),
    output: z.strictObject({}),
    handle: (context, input) => withdrawn(context, input.serial, true),
  }),
  'fuelCard.reinstate': change({
    about: 'Let a withdrawn card count again.',
    input: z.strictObject({ serial }),
    output: z.strictObject({}),
    handle: (context, input) => withdrawn(context, input.serial, false),
  }),
};

function withdrawn({ db }: Context, of: number, to: boolean) {
  const before = setFuelCardWithdrawn(db, of, to);
  if (before === null)
    throw new Refusal('not-found', `There is no fuel card ${String(of)}. Nothing was changed.`);
  return {
    output: {},
    named: `fuel card ${String(of)} ${to ? 'withdrawn' : 'reinstated'}`,
    screen: 'fuel' as const,
    areas: ['fuel' as const],
    inverse:
      before === to
        ? null
        : { request: to ? 'fuelCard.reinstate' : 'fuelCard.withdraw', input: { serial: of } },
  };
}
