import { performanceTable, readTable } from '../../shared-calc/performance/performance-table.ts';
import type { TableCell } from '../../shared-calc/performance/performance-table.ts';
import { readTableInto } from '../../shared-calc/performance/table-column.ts';
import { turnBack } from '../../shared-calc/turnback/turn-back.ts';
import type { TurnBackQuestion } from '../../shared-calc/turnback/turn-back.ts';
import { beside, machineLine, seeded } from './measure.ts';

const random = seeded(6);
const MASSES_KG = [450, 525, 600];
const ALTITUDES_M = [0, 500, 1000, 1500, 2000];
const TEMPERATURES_C = [0, 10, 20, 30, 40];
const distanceM = (i: number, j: number, k: number) => 150 + 40 * i + 25 * j + 9 * k;
const cells: TableCell[] = MASSES_KG.flatMap((massKg, i) =>
  ALTITUDES_M.flatMap((pressureAltitudeM, j) =>
    TEMPERATURES_C.map((temperatureC, k) => ({
      at: { massKg, pressureAltitudeM, temperatureC },
      value: distanceM(i, j, k),
    })),
  ),
);
const table = performanceTable(['massKg', 'pressureAltitudeM', 'temperatureC'], cells);
const grid = Float64Array.from(cells, (cell) => cell.value ?? NaN);
const N = 10_000;
const places = Array.from({ length: N }, () => ({
  massKg: 450 + 150 * random(),
  pressureAltitudeM: 2000 * random(),
  temperatureC: 40 * random(),
}));

console.log(machineLine());

beside(
  'performance: a table of three axes read, with the cells used',
  N,
  () => {
    let sum = 0;
    for (const place of places) {
      const answer = readTable(table, place);
      sum += answer.kind === 'value' ? answer.value : 0;
    }
    return sum;
  },
  {
    // No edges, no cells, no ragged rows: the least that a full regular grid needs.
    name: 'bare interpolation in a regular grid',
    run: () => {
      let sum = 0;
      for (const { massKg, pressureAltitudeM, temperatureC } of places) {
        const [x, y, z] = [(massKg - 450) / 75, pressureAltitudeM / 500, temperatureC / 10];
        const [i, j, k] = [
          Math.min(1, Math.floor(x)),
          Math.min(3, Math.floor(y)),
          Math.min(3, Math.floor(z)),
        ];
        for (let corner = 0; corner < 8; corner += 1) {
          const [a, b, c] = [corner & 1, (corner >> 1) & 1, corner >> 2];
          const share =
            (a === 1 ? x - i : 1 - x + i) * (b === 1 ? y - j : 1 - y + j) * (c === 1 ? z - k : 1 - z + k);
          sum += share * (grid[(i + a) * 25 + (j + b) * 5 + k + c] ?? NaN);
        }
      }
      return sum;
    },
  },
);

const ROWS = 1_000_000;
const temperatures = Float64Array.from({ length: ROWS }, () => 40 * random());
const altitudes = Float64Array.from({ length: ROWS }, () => 2000 * random());
const out = new Float64Array(ROWS);
beside(
  'performance: the same table for a million observations',
  ROWS,
  () => {
    readTableInto(
      out,
      table,
      { massKg: 560, pressureAltitudeM: altitudes, temperatureC: temperatures },
      Infinity,
    );
    return out;
  },
  {
    name: 'bare interpolation in a regular grid',
    run: () => {
      const x = (560 - 450) / 75;
      const i = 1;
      for (let row = 0; row < ROWS; row += 1) {
        const y = (altitudes[row] ?? NaN) / 500;
        const z = (temperatures[row] ?? NaN) / 10;
        const j = Math.min(3, Math.floor(y));
        const k = Math.min(3, Math.floor(z));
        let sum = 0;
        for (let corner = 0; corner < 8; corner += 1) {
          const a = corner & 1;
          const b = (corner >> 1) & 1;
          const c = corner >> 2;
          const share =
            (a === 1 ? x - i : 1 - x + i) * (b === 1 ? y - j : 1 - y + j) * (c === 1 ? z - k : 1 - z + k);
          sum += share * (grid[(i + a) * 25 + (j + b) * 5 + k + c] ?? NaN);
        }
        out[row] = sum;
      }
      return out;
    },
  },
);

const QUESTION: TurnBackQuestion = {
  aeroplane: {
    glideSpeedMs: 30,
    glideSinkMs: 3,
    stallSpeedMs: 21,
    climbSpeedMs: 31,
    climbRateMs: 4.5,
    liftOffM: 180,
  },
  pilot: { bankDeg: 30, reactionS: 4, wingsLevelByM: 15.24 },
  runway: { lengthM: 700, landingRunM: 250 },
  wind: { headwindMs: 3, crosswindFromRightMs: 4, gradientExponent: 1 / 7 },
  measured: null,
};
const HEIGHTS = 10;
beside('turn back: lowest height to both sides', HEIGHTS, () => {
  let sum = 0;
  for (let i = 0; i < HEIGHTS; i += 1) {
    const { left } = turnBack({ ...QUESTION, wind: { ...QUESTION.wind, headwindMs: i / 4 } });
    sum += left.kind === 'reaches' ? left.lowestHeightM : 0;
  }
  return sum;
});
