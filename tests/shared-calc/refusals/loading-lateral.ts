import { blendDensity } from '../../../shared-calc/fuel/blend-density.ts';
import type { LateralLimits } from '../../../shared-calc/loading/aeroplane.ts';
import { densest } from '../../../shared-calc/loading/backwards/fuels.ts';
import { followLateral } from '../../../shared-calc/loading/follow.ts';
import { fuelCases, isDensityDoubtful, tanksWithDensity } from '../../../shared-calc/loading/fuel-figures.ts';
import { lateralArmLimits, lateralModel, lateralRoom } from '../../../shared-calc/loading/lateral.ts';
import { isOfCg } from '../../../shared-calc/loading/limits.ts';
import { loadingModel } from '../../../shared-calc/loading/model.ts';
import { tankDensity } from '../../../shared-calc/loading/tank-density.ts';
import { usualEmptyKg, usualMaximumKg } from '../../../shared-calc/loading/usual-masses.ts';
import { withDensityTimes } from '../../../shared-calc/loading/tank-moment.ts';
import { twoFriends, twoSeater } from '../loading/example.ts';
import type { RoomRefusals } from './table.ts';

const { solids, fuel } = loadingModel(twoSeater, twoFriends);
const limits: LateralLimits = { across: 'arm', left: -0.1, right: null };

/** The example with lateral arms, its empty weight off by so much. */
function lateral(given: LateralLimits, armM = 0, lateralArmSdM = 0, otherM = 0) {
  const plane = {
    ...twoSeater,
    empty: { ...twoSeater.empty, lateralArmM: armM, lateralArmSdM },
    stations: twoSeater.stations.map((station) => ({ ...station, lateralArmM: otherM })),
    tanks: twoSeater.tanks.map((tank) => ({ ...tank, lateralArmM: 0 })),
    lateral: given,
  };
  return lateralModel(plane, solids, fuel);
}

const gasoline = { kind: 'motor gasoline' as const, ethanolPercent: 0 };
const typed = { densityKgPerL: 0.72 };

export const refusals: RoomRefusals = {
  functions: [
    {
      of: lateralModel,
      ranges: [
        { field: 'empty.lateralArmM', min: -100, max: 100, call: (v) => lateral(limits, v) },
        { field: 'empty.lateralArmSdM', min: 0, max: 1, call: (v) => lateral(limits, 0, v) },
        { field: 'stations.left.lateralArmM', min: -100, max: 100, call: (v) => lateral(limits, 0, 0, v) },
        { field: 'lateral.left', min: -100, max: 100, call: (v) => lateral({ ...limits, left: v }) },
        {
          field: 'lateral.right',
          min: -5e5,
          max: 5e5,
          call: (v) => lateral({ across: 'moment', left: null, right: v }),
        },
      ],
      refused: [
        {
          when: 'the left limit lies to the right',
          call: () => lateral({ ...limits, left: 0.1, right: 0.1 }),
          sentence: /left of the right one/,
        },
      ],
    },
    {
      of: blendDensity,
      ranges: [
        { field: 'temperatureC', min: -40, max: 60, call: (v) => blendDensity(gasoline, v) },
        {
          field: 'ethanolPercent',
          min: 0,
          max: 100,
          call: (v) => blendDensity({ ...gasoline, ethanolPercent: v }, null),
        },
        {
          field: 'at15KgPerL',
          min: 0.653,
          max: 0.838,
          call: (v) => blendDensity({ kind: 'own', at15KgPerL: v }, null),
        },
      ],
    },
    {
      of: tankDensity,
      ranges: [
        {
          field: 'temperatureC',
          min: -40,
          max: 60,
          call: (v) => tankDensity({ ...typed, blend: gasoline }, v),
        },
      ],
    },
  ],
  takeNoNumber: [
    [densest, 'takes tanks whose densities tankMoment checks'],
    [followLateral, 'takes nodes of a path and a checked limit'],
    [fuelCases, 'takes a model that loadingModel has checked'],
    [isDensityDoubtful, 'takes a checked aeroplane'],
    [tanksWithDensity, 'inner loop: checked tanks and a draw of ours'],
    [withDensityTimes, 'inner loop: a checked tank and a factor of ours'],
    [lateralArmLimits, 'takes a mass of a flight that was followed'],
    [lateralRoom, 'inner loop: a path that walk has filled'],
    [usualEmptyKg, 'says what is usual; fields refuse what is not allowed'],
    [usualMaximumKg, 'as above'],
    [isOfCg, 'takes a limit that limitsOf has made'],
  ],
};
