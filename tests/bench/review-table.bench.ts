import { judgedRows, judgeTable } from '../../renderer/screens/loading/review/judgeTable.ts';
import { caseOf } from '../../shared-calc/loading/case-of.ts';
import { largestMassKg, limitsOf } from '../../shared-calc/loading/limits.ts';
import { loadingModel } from '../../shared-calc/loading/model.ts';
import { dimensionsOf, insideOdds, normalDraws } from '../../shared-calc/loading/odds.ts';
import { newPath } from '../../shared-calc/loading/path.ts';
import { cellLoading } from '../../shared-calc/loading/review-table/cell-loading.ts';
import { columnFuel } from '../../shared-calc/loading/review-table/column-fuel.ts';
import { flightLimits, staysInside } from '../../shared-calc/loading/stays-inside.ts';
import { walk } from '../../shared-calc/loading/walk.ts';
import { seededNormals } from '../../shared-calc/numeric/seeded-normals.ts';
import { UNIT_PRESETS } from '../../shared-calc/units/preferences.ts';
import { busyAircraft, busyTable } from '../shared-calc/loading/busy-table.ts';
import { contentsAfter } from '../shared-calc/loading/oracle.ts';
import { weighingOf } from '../shared-calc/wording/example-weighing.ts';
import { beside, machineLine, report, spreadOf } from './measure.ts';

// A review table of 40 rows by 8 columns over 12 stations, 4 tanks with tables and doubt, 4 envelopes of eight edges.
const ROWS = 40;
const COLUMNS = 8;
const aircraft = busyAircraft();
const weighing = { ...weighingOf('busy'), emptyMassKg: 330, emptyArmM: 1.8 };
const table = busyTable(ROWS, COLUMNS);
const question = { aircraft, weighing, people: [], table, units: UNIT_PRESETS.metric };

const cases = table.rows.flatMap((row) =>
  table.columns.flatMap((column) => {
    const filled = columnFuel(aircraft, table, column);
    if (!filled.fits) throw new Error('every column fits');
    const loading = cellLoading(aircraft, table, row, filled, { id: 'x', name: 'x' });
    const prepared = caseOf({ aircraft, weighing, people: [], loading });
    if (!prepared.ready) throw new Error('nothing is missing');
    return [prepared];
  }),
);

console.log(machineLine());

beside(
  `review table, ${String(ROWS)} by ${String(COLUMNS)}: every margin with its words`,
  cases.length,
  () => judgedRows(question),
  {
    name: 'a spreadsheet’s loop, the contents of the tanks alone at every quarter of a litre in every cell',
    run: () => {
      let sum = 0;
      for (const { aeroplane, loading } of cases) {
        const totalL = loading.fuel.reduce((litres, { bestL }) => litres + bestL, 0);
        for (let burnedL = 0; burnedL < totalL; burnedL += 0.25)
          sum += contentsAfter(aeroplane, loading, burnedL)[0] ?? 0;
      }
      return sum;
    },
  },
);

// Odds of eight cells beside as many flights drawn one by one and followed until first outside.
const few = cases
  .filter((_, index) => index % COLUMNS === 0)
  .slice(0, 8)
  .map(({ aeroplane, loading }) => loadingModel(aeroplane, loading));
const [first] = few;
if (first === undefined) throw new Error('there is a cell');
const draws = normalDraws(dimensionsOf(first), 4096, 1);
const path = newPath(first.tanks.length);
beside(
  'review table: odds of a cell by 4,096 flights',
  few.length,
  () => few.map((model) => insideOdds(model, draws).insideProb),
  {
    name: 'as many flights drawn one by one and followed until first outside',
    run: () => {
      let inside = 0;
      for (const model of few) {
        const limits = flightLimits(limitsOf(model));
        const tolerance = 1e-9 * largestMassKg(model);
        const random = seededNormals(1);
        for (let draw = 0; draw < 4096; draw++) {
          let solidKg = 0;
          let solidKgM = 0;
          for (const item of model.solids) {
            const massKg = item.massKg + item.massSdKg * random.normal();
            solidKg += massKg;
            solidKgM += massKg * (item.armM + item.armSdM * random.normal());
          }
          const contents = model.fuel.map((f) => Math.max(0, f.bestL + 0.6 * random.normal()));
          walk(path, model.plan, model.tanks, contents, solidKg, solidKgM);
          if (staysInside(path, limits, tolerance)) inside++;
        }
      }
      return inside;
    },
  },
);

// The whole answer as the window's worker gives it: when the margins are there, and when the last of the odds.
const marginsMs: number[] = [];
const oddsMs: number[] = [];
/** Of the processor alone: what the machine does besides is not in it. */
const processorMs: number[] = [];
for (let round = 0; round < 7; round++) {
  const begunMs = performance.now();
  const begun = process.cpuUsage();
  await judgeTable(
    { ...question, number: round },
    (reply) => {
      if ('cells' in reply) marginsMs.push(performance.now() - begunMs);
      else if (reply.isDone) oddsMs.push(performance.now() - begunMs);
    },
    { isWanted: () => true, turn: () => new Promise((resolve) => setImmediate(resolve)) },
  );
  const { user, system } = process.cpuUsage(begun);
  processorMs.push((user + system) / 1000);
}
const [margins, odds] = [spreadOf(marginsMs), spreadOf(oddsMs)];
const name = `review table, ${String(ROWS)} by ${String(COLUMNS)}`;
report(
  `${name}: all margins after ${margins.medianMs.toFixed(0)} ms (p95 ${margins.p95Ms.toFixed(0)}), the last odds after ${odds.medianMs.toFixed(0)} ms (p95 ${odds.p95Ms.toFixed(0)}), with ${spreadOf(processorMs).medianMs.toFixed(0)} ms of processor time in all`,
  { name: `${name}, all odds`, value: odds.medianMs, unit: 'ms', n: cases.length },
);
