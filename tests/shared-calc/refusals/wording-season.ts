import { hourText, seasonAnswer, seasonCellWords, shareWords } from '../../../shared-calc/wording/season.ts';
import type { RoomRefusals } from './table.ts';

export const refusals: RoomRefusals = {
  functions: [],
  takeNoNumber: [
    [seasonAnswer, 'words of a computed season; its figures were checked when it was computed'],
    [seasonCellWords, 'words of one cell of a computed season'],
    [shareWords, 'words of a share that the quantile has accepted'],
    [hourText, 'an hour of the clock as text'],
  ],
};
