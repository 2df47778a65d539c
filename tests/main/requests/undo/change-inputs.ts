import type { RequestTable } from '../../../../main/requests/table.ts';
import type { MemoryLibrary } from '../../memory-library.ts';
import { aircraftInputs } from './aircraft-inputs.ts';
import type { Draw } from './draw.ts';
import { fieldInputs } from './field-inputs.ts';
import { fuelInputs } from './fuel-inputs.ts';
import { loadingInputs } from './loading-inputs.ts';
import { performanceInputs } from './performance-inputs.ts';
import { settingsInputs } from './settings-inputs.ts';

/** The requests that change what a person can undo. */
export type ChangeName = {
  [N in keyof RequestTable]: RequestTable[N]['kind'] extends 'change' ? N : never;
}[keyof RequestTable];

/** An input that fits what the library holds; null where there is nothing to ask it about yet. */
export type MakeInput = (library: MemoryLibrary, draw: Draw) => Promise<unknown>;

/** One for each changing request: who adds a request adds its inputs here, and undo is proved for it. */
export const changeInputs: Record<ChangeName, MakeInput> = {
  ...settingsInputs,
  ...aircraftInputs,
  ...performanceInputs,
  ...loadingInputs,
  ...fuelInputs,
  ...fieldInputs,
};
