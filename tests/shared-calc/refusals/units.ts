import { convert, fromSi, toSi } from '../../../shared-calc/units/convert.ts';
import { columnDuration, shownDuration } from '../../../shared-calc/units/duration-text.ts';
import { decimalsOf, figureText } from '../../../shared-calc/units/figure-text.ts';
import { fluidMassKg, standardDensityKgL } from '../../../shared-calc/units/fluid-weight.ts';
import { plainText, readNumber } from '../../../shared-calc/units/parse-number.ts';
import { parseQuantity } from '../../../shared-calc/units/parse-quantity.ts';
import { digitsOf } from '../../../shared-calc/units/quantities.ts';
import { roundSafely } from '../../../shared-calc/units/round-safely.ts';
import {
  fieldText,
  roundedFor,
  shown,
  shownFigure,
  shownRange,
  stepped,
  unitSuffix,
} from '../../../shared-calc/units/shown.ts';
import { lowestIn } from '../../../shared-calc/units/unit-table.ts';
import { byPosition, type FunctionRefusals, type RoomRefusals } from './table.ts';

const HUNDRED_YEARS_S = 3_155_760_000;

function spans(of: typeof shownDuration): FunctionRefusals {
  return {
    of,
    ranges: [
      { field: 'durationS', min: -HUNDRED_YEARS_S, max: HUNDRED_YEARS_S, call: (v) => of(v) },
      { field: 'resolutionS', min: 60, max: 86_400, call: (v) => of(100, 'plain', v) },
    ],
  };
}

export const refusals: RoomRefusals = {
  functions: [
    {
      of: toSi,
      ranges: [
        { field: 'value', min: -Infinity, max: Infinity, call: (v) => toSi(v, 'lb') },
        { field: 'value', min: -459.67, max: Infinity, call: (v) => toSi(v, 'degF') },
        { field: 'value', min: 0, max: Infinity, call: (v) => toSi(v, 'K') },
      ],
    },
    {
      of: fromSi,
      ranges: [
        { field: 'valueSi', min: -Infinity, max: Infinity, call: (v) => fromSi(v, 'lb') },
        { field: 'valueSi', min: -273.15, max: Infinity, call: (v) => fromSi(v, 'degF') },
      ],
    },
    {
      of: convert,
      ranges: [{ field: 'value', min: -273.15, max: Infinity, call: (v) => convert(v, 'degC', 'degF') }],
      refused: [
        { when: 'units of two dimensions', call: () => convert(1, 'kg', 'm'), sentence: /unit of mass/ },
      ],
    },
    {
      of: figureText,
      ranges: [
        { field: 'value', min: -1e15, max: 1e15, call: (v) => figureText(v, 1) },
        { field: 'decimals', min: 0, max: 9, call: (v) => figureText(1, v) },
      ],
    },
    { of: decimalsOf, ranges: [{ field: 'resolution', min: 1e-9, max: 1e9, call: (v) => decimalsOf(v) }] },
    {
      of: roundSafely,
      ranges: [
        { field: 'value', min: -1e15, max: 1e15, call: (v) => roundSafely(v, 1, 'plain') },
        { field: 'resolution', min: 1e-9, max: 1e9, call: (v) => roundSafely(1, v, 'plain') },
      ],
    },
    ...[shown, shownFigure].map((of) => ({
      of,
      ranges: [
        {
          field: 'valueSi',
          min: -Infinity,
          max: Infinity,
          call: (v: number) => of(v, 'mass', 'kg', 'margin'),
        },
        { field: 'valueSi', min: -273.15, max: Infinity, call: (v: number) => of(v, 'temperature', 'degC') },
      ],
    })),
    {
      of: roundedFor,
      ranges: [
        { field: 'valueSi', min: -Infinity, max: Infinity, call: (v) => roundedFor(v, 'mass', 'kg', 'load') },
      ],
    },
    {
      of: fieldText,
      ranges: [{ field: 'valueSi', min: -Infinity, max: Infinity, call: (v) => fieldText(v, 'mass', 'kg') }],
    },
    {
      of: shownRange,
      ranges: [{ field: 'highSi', min: 10, max: Infinity, call: (v) => shownRange(10, v, 'mass', 'kg') }],
    },
    {
      of: stepped,
      ranges: [
        { field: 'valueSi', min: -Infinity, max: Infinity, call: (v) => stepped(v, 'mass', 'kg', 1) },
        { field: 'count', min: -1e6, max: 1e6, call: (v) => stepped(1, 'mass', 'kg', v) },
      ],
    },
    byPosition(fluidMassKg, [
      { field: 'volumeL', min: 0, max: 10_000, good: 1 },
      { field: 'densityKgL', min: 0.5, max: 1.5, good: 1 },
    ]),
    spans(shownDuration),
    spans(columnDuration),
  ],
  takeNoNumber: [
    [standardDensityKgL, 'takes a name'],
    [plainText, 'takes text'],
    [readNumber, 'takes text and answers with a value that says why not'],
    [parseQuantity, 'takes text and answers with a value that says why not'],
    [digitsOf, 'takes names'],
    [unitSuffix, 'takes a name'],
    [lowestIn, 'takes a name'],
  ],
};
