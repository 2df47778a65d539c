import { aircraftFaults, envelopeFaults } from '../../../shared-calc/loading/aircraft-faults.ts';
import { aeroplaneOf, caseOf, loadFigures } from '../../../shared-calc/loading/case-of.ts';
import { knownMassDefaults } from '../../../shared-calc/loading/known-mass.ts';
import { loadingFaults } from '../../../shared-calc/loading/loading-faults.ts';
import { reserveOf } from '../../../shared-calc/loading/reserve.ts';
import { isUncompared, loadingReview } from '../../../shared-calc/wording/loading-review.ts';
import { listWords } from '../../../shared-calc/wording/list-words.ts';
import type { RoomRefusals } from './table.ts';

export const refusals: RoomRefusals = {
  functions: [],
  takeNoNumber: [
    [
      aircraftFaults,
      'gives what is wrong as data; each fault is shown in tests/main/requests/aircraft.test.ts',
    ],
    [envelopeFaults, 'gives what is wrong as data; as above'],
    [
      loadingFaults,
      'gives what is wrong as data; each fault is shown in tests/main/requests/loading.test.ts',
    ],
    [caseOf, 'names what is missing as data: tests/main/requests/loading-review.test.ts'],
    [aeroplaneOf, 'puts the same figures under other names; the calculation checks their ranges'],
    [loadFigures, 'looks up a person'],
    [knownMassDefaults, 'takes words only'],
    [reserveOf, 'takes a loading that was checked when it was kept'],
    [loadingReview, 'turns every refusal of the calculation into a sentence'],
    [isUncompared, 'takes no number'],
    [listWords, 'its number is a count chosen in the code, never typed'],
  ],
};
