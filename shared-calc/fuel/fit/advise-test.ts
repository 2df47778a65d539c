import { scaleMarks } from '../gauge-scale.ts';
import type { ContainerRecord, FillTestRecord } from '../records.ts';
import { containerIdsOf, UNKNOWN_CONTAINER } from './calibrate.ts';
import type { GaugeFit } from './gauge-fit.ts';
import { nextPourAdvice, WORTHWHILE_RATIO } from './next-pour.ts';

/** What one more pour, from the container last used, would do for the figure to plan on. */
export interface NextPour {
  /** Where the needle would then stand. */
  readonly positionRatio: number;
  /** Rise of the planning figure, mean over the marks between the readings that moved. */
  readonly gainL: number;
  /** Less than this is gained by any pour: enough was poured. */
  readonly isWorthwhile: boolean;
}

const USUAL_POUR_L = 5;
/** A new run to that reading starts about as well known as a drained tank. Common practice, no source. */
const START_SD_L = 0.3;

/**
 * The pour that narrows the planning shortfall most.
 * @param tests the tests that the fit was made of; the first is the one that would go on
 * @returns null where no mark of the gauge lies between the readings that moved
 * @throws RangeProblem for a scale or a container outside its range
 */
export function adviseTest(
  fit: GaugeFit,
  tests: readonly [FillTestRecord, ...FillTestRecord[]],
  containers: readonly ContainerRecord[],
): NextPour | null {
  const { firstPosition, lastPosition } = fit.rows;
  const [test] = tests;
  const marks = scaleMarks(test.scale).flatMap(({ reading }) =>
    reading.at === 'scale' && reading.positionRatio >= firstPosition && reading.positionRatio <= lastPosition
      ? [reading.positionRatio]
      : [],
  );
  if (marks.length === 0) return null;
  const lastId = test.runs.at(-1)?.containerId ?? null;
  const container = containers.find(({ id }) => id === lastId) ?? null;
  const pourL = container?.nominalL ?? USUAL_POUR_L;
  const [best] = nextPourAdvice(fit, marks, {
    index: containerIdsOf(tests).indexOf(lastId),
    scaleSdRatio: container?.scaleSdRatio ?? UNKNOWN_CONTAINER.scaleSdRatio,
    pourSdRatio:
      container === null ? UNKNOWN_CONTAINER.pourSdRatio : Math.min(0.2, container.pourSdL / pourL),
    startSdL: START_SD_L,
    pourL,
  });
  if (best === undefined) return null;
  const gainL = best.shortfallNowL - best.shortfallThenL;
  return {
    positionRatio: best.positionRatio,
    gainL,
    isWorthwhile: gainL >= WORTHWHILE_RATIO * best.shortfallNowL,
  };
}
