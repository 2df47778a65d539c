import type { DataAgeParts } from '../../shared-calc/wording/data-age.ts';
import { readStanding } from '../store/calibrations.ts';
import { readWeighings } from '../store/weighings.ts';
import type { Context } from './define.ts';
import type { PreparedQuestion } from './planner-prepared.ts';

/** When everything that an answer rests on was found. */
export function dataAge({ db }: Pick<Context, 'db'>, { hours, asked }: PreparedQuestion): DataAgeParts {
  const { aeroplane, loading, phase } = asked;
  const last = hours.localHour.at(-1);
  const lastDay =
    last === undefined ? new Date(hours.lastEpochS * 1000) : new Date(Math.floor(last / 24) * 86_400_000);
  return {
    aeroplane:
      loading === null
        ? null
        : {
            weighedOn:
              readWeighings(db, loading.aircraftId).find(({ withdrawn }) => !withdrawn)?.weighedOn ?? null,
            gauges: readStanding(db, loading.aircraftId),
            tables: [
              ...(phase === 'landing'
                ? tableOf('landing', aeroplane?.book.landing?.record)
                : tableOf('take-off', aeroplane?.book.takeOff?.record)),
              ...(asked.climbLeastMs === null && asked.climbGradientLeast === null
                ? []
                : tableOf('climb', aeroplane?.book.climb?.record)),
            ],
          },
    lastObservation: hours.isObserved ? lastDay.toISOString().slice(0, 10) : null,
  };
}

type Table = NonNullable<DataAgeParts['aeroplane']>['tables'][number];

function tableOf(name: string, record: Omit<Table, 'name'> | undefined): Table[] {
  return record === undefined ? [] : [{ name, enteredOn: record.enteredOn, source: record.source }];
}
