import { fuelAtReading } from '../../../shared-calc/fuel/readout.ts';
import {
  fuelAnswer,
  fuelCaution,
  fuelCautionShort,
  fuelCovers,
  nextPourSentence,
  readingRefusalSentence,
  residualSentence,
  rowFlagSentence,
  runStartSentence,
  tooFewReadingsSentence,
} from '../../../shared-calc/wording/fuel.ts';
import {
  byHandWords,
  csvRefusalSentence,
  runFlagSentence,
  unlikeWords,
} from '../../../shared-calc/wording/fuel-test.ts';
import {
  comparisonSentence,
  effectSentence,
  smoothnessStep,
  smoothnessWords,
  totalSentence,
} from '../../../shared-calc/wording/fuel-curves.ts';
import { curveOf, LINEAR, read } from '../fuel/fill-tests.ts';
import type { RoomRefusals } from './table.ts';

const readout = fuelAtReading(curveOf([LINEAR], 0.1), read(0.5), 'needleOnMark');
const answerAt = (fuelFlowLPerH: number, reserveS: number) =>
  fuelAnswer({
    readout,
    reading: read(0.5),
    scale: { kind: 'percent', step: 10 },
    tankWords: '',
    fuelFlowLPerH,
    reserveS,
    units: { volume: 'L', fuelFlow: 'L/h' },
  });

export const refusals: RoomRefusals = {
  functions: [
    {
      of: fuelAnswer,
      ranges: [
        { field: 'fuelFlowLPerH', min: 1, max: 500, call: (v) => answerAt(v, 1800) },
        { field: 'legalReserveS', min: 0, max: 14400, call: (v) => answerAt(18, v) },
      ],
    },
  ],
  takeNoNumber: [
    [byHandWords, 'words counts of a record'],
    [csvRefusalSentence, 'words refusals that runsFromCsv has made'],
    [runFlagSentence, 'words a flag that flagRun has made'],
    [unlikeWords, 'compares records'],
    [comparisonSentence, 'words what compareCurves has made'],
    [effectSentence, 'words two curves; fuelAtReading refuses the reading'],
    [smoothnessStep, 'finds the nearest of a few figures'],
    [smoothnessWords, 'words shares that the fit has made'],
    [totalSentence, 'words what totalFuel has made'],
    [fuelCaution, 'words a curve that a fit has made'],
    [fuelCautionShort, 'words a curve that a fit has made'],
    [fuelCovers, 'words a curve that a fit has made'],
    [nextPourSentence, 'words advice that adviseTest has made'],
    [readingRefusalSentence, 'words a refusal that parseReading has made'],
    [residualSentence, 'words a residual that curveResiduals has made'],
    [rowFlagSentence, 'words a flag that flagRows has made'],
    [runStartSentence, 'words a run that usableAfterRows has let through'],
    [tooFewReadingsSentence, 'words a count that the fit has made'],
  ],
};
