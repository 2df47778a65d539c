import { instantText, loadingVerdict } from '../../../shared-calc/wording/loading.ts';
import { isAsked, oddsSentence, timesInThousand } from '../../../shared-calc/wording/loading-odds.ts';
import { plain, strong, textOf } from '../../../shared-calc/wording/parts.ts';
import { byPosition, type RoomRefusals } from './table.ts';

export const refusals: RoomRefusals = {
  functions: [
    byPosition(instantText, [{ field: 'durationS', min: -3_155_760_000, max: 3_155_760_000, good: 60 }]),
  ],
  takeNoNumber: [
    [loadingVerdict, 'takes the result of assessLoading'],
    [isAsked, 'takes a review'],
    [oddsSentence, 'takes a review and what insideOdds has found'],
    [timesInThousand, 'takes what insideOdds has found'],
    [plain, 'takes a text'],
    [strong, 'takes a text'],
    [textOf, 'takes sentences'],
  ],
};
