import type { MakeInput } from './change-inputs.ts';

export const settingsInputs = {
  'settings.put': (_library, draw) =>
    Promise.resolve({
      key: draw.pick(['units.mass', 'units.arm', 'theme']) ?? 'theme',
      value: draw.pick([null, 'kg', { a: [1, null, draw.below(9)] }]),
      named: `setting ${draw.word()}`,
    }),
  'weather.countDoubtful': (_library, draw) =>
    Promise.resolve({ countsSuspect: draw.chance(0.5), countsImplausible: draw.chance(0.5) }),
} satisfies Record<string, MakeInput>;
