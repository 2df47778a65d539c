import type Database from 'better-sqlite3';
import { z } from 'zod';
import { readSetting, writeSetting } from '../store/settings.ts';
import { change, read } from './define.ts';

/** Which doubtful reports count in figures. All of them are kept. */
export interface Doubtful {
  /** Those that the source calls suspect; they count unless the pilot leaves them out. */
  countsSuspect: boolean;
  /** Those that stand alone against their neighbours or did not move for a day: left out unless the pilot counts them. */
  countsImplausible: boolean;
}

const usual: Doubtful = { countsSuspect: true, countsImplausible: false };
const settingKey = 'weather.doubtful';
const doubtful = z.strictObject({ countsSuspect: z.boolean(), countsImplausible: z.boolean() });

/** What the person has said about doubtful reports, or the usual. */
export function doubtfulSetting(db: Database.Database): Doubtful {
  return doubtful.safeParse(readSetting.one(db, settingKey)).data ?? usual;
}

export const weatherDoubtfulRequests = {
  'weather.doubtful': read({
    about: 'Which doubtful weather reports count in figures.',
    where: 'reader',
    input: z.strictObject({}),
    output: doubtful,
    handle: ({ db }) => doubtfulSetting(db),
  }),

  'weather.countDoubtful': change({
    about:
      'Say which doubtful weather reports count in figures: those that their source calls suspect, and the spikes and stuck values that the program found. Kept for every field.',
    input: doubtful,
    output: z.strictObject({}),
    handle: ({ db }, input) => {
      const before = doubtfulSetting(db);
      const isUsual =
        input.countsSuspect === usual.countsSuspect && input.countsImplausible === usual.countsImplausible;
      writeSetting(db, settingKey, isUsual ? null : { ...input });
      return {
        output: {},
        named: 'which doubtful reports count',
        screen: 'weather' as const,
        areas: ['weather' as const, 'settings' as const],
        inverse: { request: 'weather.countDoubtful', input: before },
      };
    },
  }),
};
