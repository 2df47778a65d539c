import type { OutputOf } from '../../../main/requests/table.ts';

import type { WeatherFigure } from '../../../shared-calc/wording/weather-figure.ts';

/** What stands beside the pictures. */
export type WeatherSide = 'hours' | 'field' | 'files';
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
  /** Of days that are no worse. */
  share = $state(0.9);
  /** Hour of the clock in hand. */
  hour = $state(15);
  /** '2026-07-19'; null until one is chosen: then it is today, or the nearest month of the record. */
  date = $state<string | null>(null);
  figure = $state<WeatherFigure>('densityAltitude');
  /** What each figure may be at most (or at least), in the unit kept inside. */
  limits = $state<Partial<Record<WeatherFigure, number | null>>>({});
  side = $state<WeatherSide>('hours');
  pending = $state<PendingFile[]>([]);
  /** A field that is being typed in and is not in the library yet. */
  isAddingField = $state(false);
}
