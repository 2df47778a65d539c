import {
  axisText,
  cellsUsedWords,
  distanceStepWords,
  tableNote,
} from '../../../shared-calc/wording/performance.ts';
import {
  climbSentence,
  distanceSentences,
  obstacleSentence,
} from '../../../shared-calc/wording/departure.ts';
import { suspicionSentence } from '../../../shared-calc/wording/table-suspicion.ts';
import type { RoomRefusals } from './table.ts';

export const refusals: RoomRefusals = {
  functions: [],
  takeNoNumber: [
    [axisText, 'words a place that performanceTable has let through'],
    [tableNote, 'words an answer that readTable has made'],
    [cellsUsedWords, 'words the cells that readTable has used'],
    [distanceSentences, 'words an answer that distanceFigures has made'],
    [suspicionSentence, 'words a suspicion that distanceSuspicions or climbSuspicions has found'],
    [obstacleSentence, 'words an answer that overObstacle has made'],
    [climbSentence, 'words an answer that climbReader has made'],
    [distanceStepWords, 'words a step that distanceSteps has made'],
  ],
};
