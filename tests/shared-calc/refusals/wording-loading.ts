import { leastMargin, loadingVerdict } from '../../../shared-calc/wording/loading.ts';
import {
  amount,
  envelopeLimitName,
  instantText,
  isBrokenBetween,
  isFirstMinute,
  limitMass,
  limitName,
  placeOf,
  pointOf,
  stretches,
  tankName,
  whenText,
} from '../../../shared-calc/wording/loading-parts.ts';
import { columnName, reviewAnswer } from '../../../shared-calc/wording/review.ts';
import { doesNotFit, judgedCell } from '../../../shared-calc/wording/review-cell.ts';
import {
  isAsked,
  oddsSentence,
  timesInThousand,
  tooManyDoubtsSentence,
} from '../../../shared-calc/wording/loading-odds.ts';
import { backwardsHeading, sayAnswer, sayCompany } from '../../../shared-calc/wording/backwards.ts';
import { thePlace, theTank } from '../../../shared-calc/wording/names.ts';
import { numberWord } from '../../../shared-calc/wording/number-words.ts';
import { plain, strong, textOf } from '../../../shared-calc/wording/parts.ts';
import { scenarioChangesSentence, wasWords } from '../../../shared-calc/wording/scenario-changes.ts';
import {
  seenNow,
  verdictChanges,
  verdictChangesSentence,
} from '../../../shared-calc/wording/verdict-changes.ts';
import { blendName, blendSource, densityWords } from '../../../shared-calc/wording/fuel-density.ts';
import { byPosition, type RoomRefusals } from './table.ts';

export const refusals: RoomRefusals = {
  functions: [
    byPosition(instantText, [{ field: 'durationS', min: -3_155_760_000, max: 3_155_760_000, good: 60 }]),
  ],
  takeNoNumber: [
    [loadingVerdict, 'takes the result of assessLoading'],
    [blendName, 'takes a kind of fuel that blendDensity has checked'],
    [blendSource, 'as above'],
    [densityWords, 'blendDensity refuses the figures'],
    [amount, 'takes a margin of the result'],
    [limitMass, 'takes the limit of a checked model'],
    [limitName, 'takes a margin of the result'],
    [envelopeLimitName, 'takes a limit'],
    [isFirstMinute, 'compares'],
    [isBrokenBetween, 'takes a margin of the result'],
    [whenText, 'takes an instant of the result'],
    [placeOf, 'takes a point of the result'],
    [pointOf, 'takes a part of the flight'],
    [stretches, 'takes stretches of the result'],
    [tankName, 'takes a tank of the result'],
    [judgedCell, 'says a problem in words instead of throwing it'],
    [doesNotFit, 'takes texts'],
    [columnName, 'takes a column as the library keeps it'],
    [reviewAnswer, 'takes judged cells'],
    [leastMargin, 'takes a margin that assessLoading has found'],
    [sayAnswer, 'takes an answer that remediesFor or roomLeft has found'],
    [sayCompany, 'takes what companiesFor has found'],
    [backwardsHeading, 'takes answers'],
    [verdictChanges, 'takes verdicts'],
    [verdictChangesSentence, 'takes what verdictChanges has found'],
    [seenNow, 'takes verdicts'],
    [scenarioChangesSentence, 'takes what verdictChanges has found'],
    [wasWords, 'takes what verdictChanges has found'],
    [thePlace, 'takes a name'],
    [theTank, 'takes a name'],
    [isAsked, 'takes a review'],
    [oddsSentence, 'takes a review and what insideOdds has found'],
    [tooManyDoubtsSentence, 'takes a count of tanks'],
    [timesInThousand, 'takes what insideOdds has found'],
    [numberWord, 'takes any count'],
    [plain, 'takes a text'],
    [strong, 'takes a text'],
    [textOf, 'takes sentences'],
  ],
};
