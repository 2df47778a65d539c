import { z } from 'zod';
import type { LoadingInputs } from '../../shared-calc/loading/case-of.ts';
import { sheetChanges, type StandingCalibration } from '../../shared-calc/loading/sheet-changes.ts';
import { readCalibrations } from '../store/calibrations.ts';
import {
  appendLoadingSheet,
  readLoadingSheets,
  setLoadingSheetWithdrawn,
  type LoadingSheetRecord,
} from '../store/loading-sheets.ts';
import { readLoading } from '../store/loadings.ts';
import { aircraft, weighing } from './aircraft-schema.ts';
import { requireAircraft } from './aircraft.ts';
import { change, read, type Context } from './define.ts';
import { serial } from './fuel-schema.ts';
import { loadingInputs } from './loading-review.ts';
import { loading } from './loading-schema.ts';
import { person } from './people.ts';
import { Refusal } from './problem.ts';
import { day, id } from './ranges.ts';

const paper = z.enum(['A4', 'US Letter']);

const inputs = z.strictObject({
  aircraft,
  weighing: weighing.nullable(),
  loading,
  people: z.array(person),
}) satisfies z.ZodType<LoadingInputs>;

export const loadingSheetRequests = {
  'loadingSheet.list': read({
    about:
      'The loading sheets printed for an aeroplane, the latest first, each with what changed since it was printed.',
    where: 'reader',
    input: z.strictObject({ aircraftId: id }),
    output: z.array(
      z.strictObject({
        serial,
        loadingId: id,
        loadingName: z.string(),
        printedOn: day,
        paper,
        /** Clauses, each with its day where it has one; a sheet with any is superseded. */
        changes: z.array(z.string()),
        withdrawn: z.boolean(),
      }),
    ),
    handle: ({ db }, { aircraftId }) => {
      requireAircraft(db, aircraftId);
      return readLoadingSheets(db, aircraftId).map(({ inputs: printed, ...sheet }) => ({
        ...sheet,
        loadingName: printed.loading.name,
        changes: changesSince(db, sheet.loadingId, printed),
      }));
    },
  }),
  'loadingSheet.get': read({
    about: 'All that a printed loading sheet was made from, as it was then.',
    where: 'reader',
    input: z.strictObject({ aircraftId: id, serial }),
    output: z.strictObject({ serial, printedOn: day, paper, inputs }),
    handle: ({ db }, input) => {
      const found = readLoadingSheets(db, input.aircraftId).find((each) => each.serial === input.serial);
      if (found === undefined) throw noSheet(input.serial);
      const { printedOn, paper: on, inputs: printed } = found;
      return {
        serial: found.serial,
        printedOn,
        paper: on,
        inputs: { ...printed, people: [...printed.people] },
      };
    },
  }),
  'loadingSheet.record': change({
    about:
      'Record that a loading sheet is printed, with all it is made from. Gives the serial that it carries.',
    input: z.strictObject({ loadingId: id, printedOn: day, paper }),
    output: z.strictObject({ serial }),
    handle: ({ db }, input) => {
      const all = loadingInputs(db, input.loadingId);
      const aboard = new Set(all.loading.items.map(({ personId }) => personId));
      const given = appendLoadingSheet(db, {
        printedOn: input.printedOn,
        paper: input.paper,
        inputs: { ...all, people: all.people.filter((each) => aboard.has(each.id)) },
      });
      return {
        output: { serial: given },
        named: `loading sheet ${String(given)} recorded`,
        screen: 'loading',
        areas: ['loading'],
        inverse: { request: 'loadingSheet.withdraw', input: { serial: given } },
        // Never recorded twice: done again, the withdrawn one counts once more.
        forward: { request: 'loadingSheet.reinstate', input: { serial: given } },
      };
    },
  }),
  'loadingSheet.withdraw': change({
    about: 'Withdraw a printed loading sheet, as when it was spoiled; its serial is not used again.',
    input: z.strictObject({ serial }),
    output: z.strictObject({}),
    handle: (context, input) => withdrawn(context, input.serial, true),
  }),
  'loadingSheet.reinstate': change({
    about: 'Let a withdrawn loading sheet count again.',
    input: z.strictObject({ serial }),
    output: z.strictObject({}),
    handle: (context, input) => withdrawn(context, input.serial, false),
  }),
};

function changesSince(db: Context['db'], loadingId: string, printed: LoadingSheetRecord['inputs']): string[] {
  const kept = readLoading(db, loadingId);
  return kept === null || kept.removed
    ? ['the loading was removed']
    : sheetChanges(printed, loadingInputs(db, loadingId), standingCalibrations(db, printed));
}

/** Of the tanks whose litres on the sheet were read from a gauge, the curve that counts now. */
function standingCalibrations(
  db: Context['db'],
  { loading: { fuel } }: LoadingSheetRecord['inputs'],
): StandingCalibration[] {
  return fuel.flatMap(({ tankId, gauge }) => {
    if (gauge == null) return [];
    const curve = readCalibrations(db, tankId).find(({ withdrawn: isGone }) => !isGone);
    return [{ tankId, curve: curve === undefined ? null : { id: curve.id, adoptedOn: curve.adoptedOn } }];
  });
}

function withdrawn({ db }: Context, of: number, to: boolean) {
  const before = setLoadingSheetWithdrawn(db, of, to);
  if (before === null) throw noSheet(of);
  return {
    output: {},
    named: `loading sheet ${String(of)} ${to ? 'withdrawn' : 'reinstated'}`,
    screen: 'loading' as const,
    areas: ['loading' as const],
    inverse:
      before === to
        ? null
        : { request: to ? 'loadingSheet.reinstate' : 'loadingSheet.withdraw', input: { serial: of } },
  };
}

function noSheet(of: number): Refusal {
  return new Refusal('not-found', `There is no loading sheet ${String(of)}. Nothing was changed.`);
}
