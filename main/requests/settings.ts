import { z } from 'zod';
import { readSetting, writeSetting } from '../store/settings.ts';
import { change, read, work } from './define.ts';

/** Any setting is a small JSON value under a key; the window gives each key its meaning and its default. */
const key = z
  .string()
  .regex(/^[a-z][a-zA-Z0-9.-]{0,99}$/, 'a key starts with a lower-case letter and has letters, digits, dots');
const value = z.json();

export const settingsRequests = {
  'settings.get': read({
    about: 'Every setting that has been changed from its default, by key.',
    where: 'reader',
    input: z.strictObject({}),
    output: z.record(z.string(), value),
    handle: ({ db }) => readSetting.all(db),
  }),
  'settings.put': change({
    about: 'Set one setting, or return it to its default with null.',
    input: z.strictObject({ key, value, named: z.string().min(1).max(100) }),
    output: z.strictObject({}),
    handle: ({ db }, input) => {
      const before = readSetting.one(db, input.key);
      writeSetting(db, input.key, input.value);
      return {
        output: {},
        named: input.named,
        screen: 'settings' as const,
        areas: ['settings' as const],
        inverse: { request: 'settings.put', input: { ...input, value: before } },
      };
    },
  }),
  'settings.remember': work({
    about: 'Keep where the person left off (screen, aeroplane, field): no change that undo would name.',
    input: z.strictObject({ key, value }),
    output: z.strictObject({}),
    handle: ({ db }, input) => {
      writeSetting(db, input.key, input.value);
      return {};
    },
  }),
};
