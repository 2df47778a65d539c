import type { OutputOf } from '../../../main/requests/table.ts';

export type Preview = OutputOf<'weather.preview'>;
export type StationChoice =
  | { listKey: string }
  | { stationId: string }
  | {
      place: {
        name: string;
        identifier: string | null;
        latitudeDeg: number;
        longitudeDeg: number;
        elevationM: number;
      };
    };

/** A file that was dropped or chosen, on its way into the library. */
export interface PendingFile {
  key: string;
  fileName: string;
  path: string;
  /** null while it is being looked through. */
  preview: Preview | null;
  refusal: string | null;
  /** Where its station lies, as guessed or as the person said; null while nobody knows. */
  station: StationChoice | null;
  stationWords: string;
}

/** What the person finds again on coming back to this screen. */
export class WeatherState {
  share = $state(0.5);
  hand = $state({ month: 6, hour: 15 });
  pending = $state<PendingFile[]>([]);
  /** A field that is being typed in and is not in the library yet. */
  isAddingField = $state(false);
}
