import { cellsUsedWords, distanceStepWords, tableNote } from '../../../shared-calc/wording/performance.ts';
import type { RoomRefusals } from './table.ts';

export const refusals: RoomRefusals = {
  functions: [],
  takeNoNumber: [
    [tableNote, 'words an answer that readTable has made'],
    [cellsUsedWords, 'words the cells that readTable has used'],
    [distanceStepWords, 'words a step that distanceSteps has made'],
  ],
};
