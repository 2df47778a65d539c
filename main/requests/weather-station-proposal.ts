import type { ScanSummary } from '../weather-import/scan.ts';
import type { ListedStation } from '../weather-import/stations/station-list.ts';
import { distanceM } from './distance.ts';

/** Records move by hundreds of metres over the years; further than this from the list, one of the two is wrong. */
const samePlaceM = 10_000;
/** From here on a difference of elevation is said: 10 ft. */
const worthSayingM = 3;

export interface StationProposal {
  stationProposal:
    | { listKey: string; elevationM?: number }
    | {
        place: {
          name: string;
          identifier: string | null;
          latitudeDeg: number;
          longitudeDeg: number;
          elevationM: number;
          placeFrom: 'file';
        };
      }
    | null;
  stationRemarks: string[];
}

/**
 * Which station a file is of, by its records and the bundled list together. The list gives name and place, the records
 * the elevation, which is nearer to their barometer. Where there is no entry the records give all, if they say enough.
 */
export function proposeStation(
  summary: ScanSummary,
  listed: Pick<ListedStation, 'key' | 'name' | 'latitudeDeg' | 'longitudeDeg' | 'elevationM'> | null,
): StationProposal {
  const { placeInFile: inFile, stationRead: identifier } = summary;
  if (listed === null) {
    if (inFile?.elevationM == null) return { stationProposal: null, stationRemarks: [] };
    return {
      stationProposal: {
        place: {
          name: (inFile.name ?? identifier ?? 'Station').slice(0, 100),
          identifier: identifier?.slice(0, 20) ?? null,
          latitudeDeg: inFile.latitudeDeg,
          longitudeDeg: inFile.longitudeDeg,
          elevationM: inFile.elevationM,
          placeFrom: 'file',
        },
      },
      stationRemarks: [],
    };
  }
  if (inFile === null) return { stationProposal: { listKey: listed.key }, stationRemarks: [] };

  const stationRemarks: string[] = [];
  const apartM = distanceM(listed, inFile);
  if (apartM > samePlaceM)
    stationRemarks.push(
      `${String(inFile.rowCount)} of ${String(inFile.placedRowCount)} records put the station ${String(Math.round(apartM / 1000))} km from where the list has ${listed.name}. The list's place is taken.`,
    );
  const { elevationM } = inFile;
  if (elevationM === null) return { stationProposal: { listKey: listed.key }, stationRemarks };
  if (Math.abs(elevationM - listed.elevationM) > worthSayingM)
    stationRemarks.push(
      `The records give an elevation of ${String(elevationM)} m, the list ${String(listed.elevationM)} m. The records' is taken.`,
    );
  return { stationProposal: { listKey: listed.key, elevationM }, stationRemarks };
}
