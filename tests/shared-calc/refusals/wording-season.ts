import { alikeWords, todaySentences, yearsSentence } from '../../../shared-calc/wording/today.ts';
import { beyondWords, dayHourWords, windowWords, worstWords } from '../../../shared-calc/wording/day.ts';
import { figureColumn, figureShown, orBetter } from '../../../shared-calc/wording/weather-figure.ts';
import { countOf } from '../../../shared-calc/wording/count-of.ts';
import {
  hourText,
  quantileWords,
  seasonAnswer,
  seasonCellWords,
} from '../../../shared-calc/wording/season.ts';
import { shareOfDaysWords, shareWords } from '../../../shared-calc/wording/share-words.ts';
import type { RoomRefusals } from './table.ts';

export const refusals: RoomRefusals = {
  functions: [],
  takeNoNumber: [
    [seasonAnswer, 'words of a computed season; its figures were checked when it was computed'],
    [seasonCellWords, 'words of one cell of a computed season'],
    [quantileWords, 'words of one place of a computed picture'],
    [countOf, 'words of a count'],
    [todaySentences, 'words of a computed day'],
    [alikeWords, 'words of a computed day'],
    [yearsSentence, 'words of computed years'],
    [shareWords, 'words of a share that the quantile has accepted'],
    [shareOfDaysWords, 'words of a share that the quantile has accepted'],
    [dayHourWords, 'words of one hour of a computed day'],
    [windowWords, 'words of a window that was computed'],
    [beyondWords, 'words of one hour of a computed day'],
    [worstWords, 'words of a count'],
    [figureShown, 'a computed figure; shown() refuses what is no number'],
    [figureColumn, 'a computed figure; shownFigure() refuses what is no number'],
    [orBetter, 'words of a figure'],
    [hourText, 'an hour of the clock as text'],
  ],
};
