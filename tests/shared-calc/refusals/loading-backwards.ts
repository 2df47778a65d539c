import {
  usualSeatArmM,
  withFuelL,
  withMassKg,
  withSwappedSeats,
} from '../../../shared-calc/loading/alter.ts';
import { companiesFor } from '../../../shared-calc/loading/backwards/companies.ts';
import { ballastAt } from '../../../shared-calc/loading/backwards/ballast.ts';
import {
  fuelRanges,
  longestFlight,
  mostLitres,
  withFuel,
} from '../../../shared-calc/loading/backwards/fuels.ts';
import { keptRanges } from '../../../shared-calc/loading/backwards/kept-ranges.ts';
import {
  flightShareOf,
  keptBy,
  reserveSlackS,
  type Asked,
} from '../../../shared-calc/loading/backwards/kept.ts';
import { landingRanges } from '../../../shared-calc/loading/backwards/landings.ts';
import { leaveBehind, without } from '../../../shared-calc/loading/backwards/leave-behind.ts';
import { loadRanges, withLoad, withMass } from '../../../shared-calc/loading/backwards/loads.ts';
import { moveRanges, withMoved } from '../../../shared-calc/loading/backwards/moves.ts';
import { nearestSure, oddsOf } from '../../../shared-calc/loading/backwards/nine-in-ten.ts';
import {
  fuelAnswer,
  fuelRemedies,
  fuelRoom,
  nearestFuel,
  sharingsOf,
} from '../../../shared-calc/loading/backwards/fuel-answers.ts';
import { remediesFor } from '../../../shared-calc/loading/backwards/remedies.ts';
import { moveItem, stepsOf } from '../../../shared-calc/loading/backwards/steps.ts';
import { twoChanges } from '../../../shared-calc/loading/backwards/two-changes.ts';
import { roomLeft } from '../../../shared-calc/loading/backwards/room-left.ts';
import {
  askedOf,
  changed,
  freshItem,
  isPerson,
  nameOf,
  pilotItemOf,
  roundedInto,
  subjectOf,
  waysTo,
  wayOf,
} from '../../../shared-calc/loading/backwards/subject.ts';
import { steepestPerKg } from '../../../shared-calc/loading/backwards/steepest.ts';
import { burnChoiceId, burnChoices } from '../../../shared-calc/loading/burn-orders.ts';
import { sheetChanges } from '../../../shared-calc/loading/sheet-changes.ts';
import { normalDraws } from '../../../shared-calc/loading/odds.ts';
import { UNIT_PRESETS } from '../../../shared-calc/units/preferences.ts';
import { exampleAircraft, exampleLoading } from '../../main/example-aircraft.ts';
import { twoFriends, twoSeater } from '../loading/example.ts';
import type { RoomRefusals } from './table.ts';

const asked: Asked = { aeroplane: twoSeater, loading: twoFriends, reserveS: 1800 };
const draws = (dimensions: number) => normalDraws(dimensions, 64, 1);
const bare = { aircraft: exampleAircraft(), weighing: null, loading: exampleLoading(), people: [] };
const lost = { stationId: 'nowhere', armM: null };

export const refusals: RoomRefusals = {
  functions: [
    {
      of: loadRanges,
      refused: [
        { when: 'a load that is not there', call: () => loadRanges(asked, 9), sentence: /no load 9/ },
      ],
    },
    {
      of: moveRanges,
      refused: [
        {
          when: 'a load that is not there',
          call: () => moveRanges(asked, 9, { stationId: 'bag', armM: null }),
          sentence: /no load 9/,
        },
        {
          when: 'an unknown station',
          call: () => moveRanges(asked, 2, lost),
          sentence: /no station nowhere/,
        },
      ],
    },
    {
      of: ballastAt,
      refused: [
        {
          when: 'an unknown station',
          call: () => ballastAt(asked, 'nowhere', null),
          sentence: /no station nowhere/,
        },
      ],
    },
    {
      of: leaveBehind,
      refused: [
        {
          when: 'more pieces than can all be tried',
          call: () =>
            leaveBehind(
              asked,
              Array.from({ length: 15 }, (_, i) => i),
            ),
          sentence: /at most 14/,
        },
        { when: 'a piece that is not there', call: () => leaveBehind(asked, [7]), sentence: /no load 7/ },
      ],
    },
    {
      of: mostLitres,
      ranges: [{ field: 'parts[0]', min: 0, max: 1, call: (v) => mostLitres(asked, [v, 1 - v]) }],
      refused: [
        {
          when: 'parts for other tanks',
          call: () => mostLitres(asked, [1]),
          sentence: /2 tanks take as many/,
        },
        {
          when: 'parts that are not the whole',
          call: () => mostLitres(asked, [0.4, 0.4]),
          sentence: /add up to 0\.8/,
        },
      ],
    },
    {
      of: fuelRanges,
      refused: [
        { when: 'parts for other tanks', call: () => fuelRanges(asked, [1]), sentence: /as many parts/ },
      ],
    },
    {
      of: longestFlight,
      refused: [
        { when: 'parts for other tanks', call: () => longestFlight(asked, [1]), sentence: /as many parts/ },
      ],
    },
    {
      of: companiesFor,
      ranges: [
        {
          field: 'landingAfterS',
          min: 0,
          max: 172_800,
          call: (v) =>
            companiesFor(
              bare,
              { pilotId: null, passengerIds: [], landingAfterS: v },
              UNIT_PRESETS.metric,
              draws,
            ),
        },
      ],
      refused: [
        {
          when: 'more passengers than anybody compares',
          call: () =>
            companiesFor(
              bare,
              { pilotId: null, passengerIds: [...'abcdefghi'], landingAfterS: 0 },
              UNIT_PRESETS.metric,
              draws,
            ),
          sentence: /passengerIds is 9; allowed 0 to 8/,
        },
      ],
    },
    {
      of: nearestSure,
      ranges: [
        {
          field: 'wantedProb',
          min: 1e-6,
          max: 1 - 1e-6,
          call: (v) => nearestSure((kg) => withMass(asked, 2, kg), { from: 5, to: 5 }, 'to', v, draws),
        },
      ],
    },
  ],
  takeNoNumber: [
    [withMassKg, 'changes a record that the library checks when it is put there'],
    [withFuelL, 'changes a record that the library checks when it is put there'],
    [withSwappedSeats, 'changes a record that the library checks when it is put there'],
    [moveItem, 'changes a record that the library checks when it is put there'],
    [burnChoices, 'lists the orders of any tanks'],
    [burnChoiceId, 'names an order'],
    [sheetChanges, 'compares records that the library has checked'],
    [keptBy, 'hands its loading to loadingModel, which refuses'],
    [flightShareOf, 'takes a margin that assessModel has found'],
    [reserveSlackS, 'takes a loading that loadingModel checks'],
    [keptRanges, 'takes a range that the questions have made'],
    [landingRanges, 'hands its loading to loadingModel, which refuses'],
    [oddsOf, 'hands its loading to loadingModel, which refuses'],
    [steepestPerKg, 'takes a checked model and a mass in it'],
    ...(
      [
        fuelRemedies,
        fuelRoom,
        nearestFuel,
        fuelAnswer,
        sharingsOf,
        remediesFor,
        twoChanges,
        stepsOf,
        roomLeft,
        askedOf,
        changed,
        freshItem,
        isPerson,
        nameOf,
        pilotItemOf,
        roundedInto,
        subjectOf,
        usualSeatArmM,
        waysTo,
        wayOf,
      ] as const
    ).map((of): [typeof of, string] => [
      of,
      'asks about a loading of the library, which loadingModel checks',
    ]),
    [withMass, 'changes a loading that is checked where it is used'],
    [withLoad, 'changes a loading that is checked where it is used'],
    [withFuel, 'changes a loading that is checked where it is used'],
    [withMoved, 'changes a loading that is checked where it is used'],
    [without, 'changes a loading that is checked where it is used'],
  ],
};
