import { daysInWords, intervalWords } from '../../../shared-calc/wording/days-in-words.ts';
import { plannerAnswer, plannerText } from '../../../shared-calc/wording/planner.ts';
import {
  clockText,
  daysCountedWords,
  hourCountWords,
  limitColumn,
  limitWords,
} from '../../../shared-calc/wording/planner-words.ts';
import {
  buysSentence,
  heaviestSentence,
  yearSentence,
} from '../../../shared-calc/wording/planner-backwards.ts';
import { dataAgeWords } from '../../../shared-calc/wording/data-age.ts';
import { dayText } from '../../../shared-calc/wording/day-text.ts';
import { daysOverSentence } from '../../../shared-calc/wording/planner-obstacle.ts';
import { plannerNotes } from '../../../shared-calc/wording/planner-notes.ts';
import { byPosition, type RoomRefusals } from './table.ts';

export const refusals: RoomRefusals = {
  functions: [
    byPosition(daysInWords as (share: number) => string, [
      { field: 'share', min: 0.01, max: 0.99, good: 0.9 },
    ]),
  ],
  takeNoNumber: [
    [intervalWords, 'words what the resampling gives'],
    [clockText, 'any hour is a time on the clock'],
    [limitWords, 'takes the name of a limit'],
    [limitColumn, 'takes the name of a limit'],
    [daysCountedWords, 'words a plan'],
    [hourCountWords, 'words an hour of a plan'],
    [plannerAnswer, 'words a plan'],
    [plannerText, 'joins sentences'],
    [heaviestSentence, 'words what was solved'],
    [buysSentence, 'words two plans'],
    [yearSentence, 'words runs of dates'],
    [plannerNotes, 'words what a plan rests on'],
    [dataAgeWords, 'words days'],
    [daysOverSentence, 'words counted days'],
    [dayText, 'words a day'],
  ],
};
