import {
  dimensionsOf,
  insideOdds,
  normalDraws,
  type NormalDraws,
} from '../../../../shared-calc/loading/odds.ts';
import type { LoadingModel } from '../../../../shared-calc/loading/model.ts';
import { cellLoading } from '../../../../shared-calc/loading/review-table/cell-loading.ts';
import { columnFuel } from '../../../../shared-calc/loading/review-table/column-fuel.ts';
import { SOBOL_MOST_DIMENSIONS } from '../../../../shared-calc/numeric/sobol.ts';
import { shown } from '../../../../shared-calc/units/shown.ts';
import { isAsked, timesInThousand } from '../../../../shared-calc/wording/loading-odds.ts';
import type { LoadingReview } from '../../../../shared-calc/wording/loading-review.ts';
import {
  doesNotFit,
  judgedCell,
  type JudgedCell,
  type ReviewCell,
} from '../../../../shared-calc/wording/review-cell.ts';
import { oddsDraws } from '../oddsDraws.ts';
import type { ReviewJob, ReviewReply, SaidOdds } from './review-job.ts';

/** So long the work goes on before it lets a newer question in, and so long odds are gathered before they are told. */
const turnMs = 15;
const tellMs = 80;

interface Surroundings {
  /** False once there is a newer question. */
  isWanted: () => boolean;
  turn: () => Promise<void>;
}

/** Judge every cell and tell all margins; then tell the odds as they come, with the same draws as a single loading's. */
export async function judgeTable(
  job: ReviewJob,
  tell: (reply: ReviewReply) => void,
  { isWanted, turn }: Surroundings,
): Promise<void> {
  const { number } = job;
  const judged = judgedRows(job);
  tell({ number, cells: judged.map((row) => row.map((each) => ('cell' in each ? each.cell : each))) });
  const draws = new Map<number, NormalDraws>();
  let odds: SaidOdds[] = [];
  let [turnedMs, toldMs] = [performance.now(), performance.now()];
  for (const [row, cells] of judged.entries()) {
    for (const [column, each] of cells.entries()) {
      const text = 'review' in each ? oddsText(each.review, draws) : null;
      if (text !== null) odds.push({ row, column, text });
      const nowMs = performance.now();
      if (nowMs - toldMs > tellMs) {
        tell({ number, odds, isDone: false });
        odds = [];
        toldMs = nowMs;
      }
      if (nowMs - turnedMs > turnMs) {
        await turn();
        if (!isWanted()) return;
        turnedMs = performance.now();
      }
    }
  }
  tell({ number, odds, isDone: true });
}

/** The cells of every row in the order of the columns. */
export function judgedRows({
  aircraft,
  weighing,
  people,
  table,
  units,
}: Omit<ReviewJob, 'number'>): (JudgedCell | ReviewCell)[][] {
  return table.rows.map((row) =>
    table.columns.map((column) => {
      const filled = columnFuel(aircraft, table, column);
      if (!filled.fits)
        return doesNotFit(
          shown(filled.neededL, 'volume', units.volume, 'needed'),
          shown(filled.usableL, 'volume', units.volume, 'allowance'),
        );
      const loading = cellLoading(aircraft, table, row, filled, { id: 'cell', name: row.name });
      return judgedCell({ aircraft, weighing, people, loading }, units);
    }),
  );
}

/** null where nothing is in doubt, or the probability would not answer what the verdict answers. */
function oddsText(review: LoadingReview, draws: Map<number, NormalDraws>): string | null {
  const { result } = review;
  if (result === null || !isAsked(review)) return null;
  const dimensions = dimensionsOf(result.model);
  if (dimensions > SOBOL_MOST_DIMENSIONS || !isInDoubt(result.model)) return null;
  const made = draws.get(dimensions) ?? normalDraws(dimensions, oddsDraws.count, oddsDraws.seed);
  draws.set(dimensions, made);
  return timesInThousand(insideOdds(result.model, made));
}

/** Whether any input is doubtful: where none is, there are no odds to tell. */
function isInDoubt({ solids, fuel }: LoadingModel): boolean {
  return (
    solids.some(({ massSdKg, armSdM }) => massSdKg > 0 || armSdM > 0) ||
    fuel.some(({ lowL, highL }) => highL > lowL)
  );
}
