import type { App } from './app.svelte.ts';

/** A choice above the index that every screen follows: which aeroplane, which field. */
export interface Picker {
  label: string;
  /** Called once while the index is built, so it may hold queries. */
  make: (app: App) => {
    options: () => { id: string; word: string }[];
    currentId: () => string | null;
    choose: (id: string) => void;
  };
}

const aeroplane: Picker = {
  label: 'Aeroplane',
  make: (app) => ({
    options: () => app.aeroplanes.answer?.aircraft.map(({ id, name }) => ({ id, word: name })) ?? [],
    currentId: () => app.aeroplaneId,
    choose: (id) => void app.change('aircraft.choose', { id }),
  }),
};

const field: Picker = {
  label: 'Field',
  make: (app) => ({
    options: () => app.fields.answer?.map(({ id, name }) => ({ id, word: name })) ?? [],
    currentId: () => app.fieldId,
    choose: (id) => {
      app.chooseField(id);
    },
  }),
};

export const pickers: readonly Picker[] = [aeroplane, field];
