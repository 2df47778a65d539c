import { assessModel } from '../../../shared-calc/loading/assess.ts';
import { bandAt } from '../../../shared-calc/loading/envelope.ts';
import { loadingModel } from '../../../shared-calc/loading/model.ts';
import { corridorOf, narrowRoom } from '../../../shared-calc/loading/corridor.ts';
import { dimensionsOf, insideOdds, normalDraws } from '../../../shared-calc/loading/odds.ts';
import { partOf } from '../../../shared-calc/loading/path.ts';
import { doubtShares, ellipseOf, mostDoubtful, spreadAfterL } from '../../../shared-calc/loading/spread.ts';
import { flightLimits, massesKept, staysInside } from '../../../shared-calc/loading/stays-inside.ts';
import { twoFriends, twoSeater } from '../loading/example.ts';
import { byPosition, type RoomRefusals } from './table.ts';

const model = loadingModel(twoSeater, twoFriends);
const { path } = assessModel(model);
const spread = spreadAfterL(model, path, 0);
const someDraws = normalDraws(2, 64, 1);

export const refusals: RoomRefusals = {
  functions: [
    byPosition(normalDraws, [
      { field: 'dimensions', min: 2, max: 16, good: 2 },
      { field: 'count', min: 64, max: 65_536, good: 64 },
      { field: 'seed', min: 1, max: 2 ** 32 - 17, good: 1 },
    ]),
    {
      of: insideOdds,
      ranges: [
        {
          field: 'draws.dimensions',
          min: 2,
          max: 16,
          call: (v) => insideOdds(model, { ...someDraws, dimensions: v, groups: 0 }),
        },
      ],
    },
    {
      of: spreadAfterL,
      ranges: [
        {
          field: 'burnedL',
          min: 0,
          max: path.burnedL[path.nodes - 1] ?? NaN,
          call: (v) => spreadAfterL(model, path, v),
        },
      ],
    },
    {
      of: ellipseOf,
      ranges: [
        { field: 'share', min: 1e-6, max: 1 - 1e-6, call: (v) => ellipseOf(spread, v, 8) },
        { field: 'count', min: 8, max: 1000, call: (v) => ellipseOf(spread, 0.9, v) },
      ],
    },
  ],
  takeNoNumber: [
    [dimensionsOf, 'counts the tanks of a model that loadingModel has checked'],
    [doubtShares, 'takes a margin that assessModel has found'],
    [mostDoubtful, 'takes margins that assessModel has found'],
    [flightLimits, 'takes limits that limitsOf has made'],
    [corridorOf, 'takes checked envelopes'],
    [narrowRoom, 'inner loop: a path that walk has filled'],
    [massesKept, 'inner loop: a path that walk has filled'],
    [staysInside, 'inner loop: a path that walk has filled'],
    [partOf, 'takes a path that walk has filled'],
    [bandAt, 'any mass has a band: above and below the envelope those at its ends'],
  ],
};
