import type { InputOf, OutputOf } from '../../../main/requests/table.ts';

type Looked = OutputOf<'weather.previewFiles'>['files'][number];
export type Preview = NonNullable<Looked['preview']>;
type ToImport = InputOf<'weather.importFiles'>['files'][number];
export type StationChoice = ToImport['station'];
/** What a person may have to say about a file before it can be read. */
export type ReadingChoices = Pick<
  ToImport,
  'stationInFile' | 'reportMonth' | 'standardOffsetMinutes' | 'mapping'
>;

/** A file that was dropped or chosen, on its way into the library; one for each file of an archive. */
export interface PendingFile {
  key: string;
  fileName: string;
  path: string;
  entry: string | null;
  choices: ReadingChoices;
  /** While it is being looked through, none of the next three is there; afterwards one is. */
  preview: Preview | null;
  /** The library has the very same file. */
  known: Looked['known'];
  problem: Looked['problem'];
  /** Where its station lies, as guessed or as the person said; null while nobody knows. */
  station: StationChoice | null;
  stationWords: string;
}

export function isBeingLookedAt({ preview, known, problem }: PendingFile): boolean {
  return preview === null && known === null && problem === null;
}

/** What a problem asks for, where the file can be read once it is said. */
export function needOf({ problem }: PendingFile): 'month' | 'zone' | 'mapping' | null {
  switch (problem?.code) {
    case 'month-needed':
      return 'month';
    case 'zone-needed':
      return 'zone';
    case 'mapping-needed':
      return 'mapping';
    default:
      return null;
  }
}
