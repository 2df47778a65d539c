import type { FillData } from '../../../../shared-calc/fuel/fit/fill-data.ts';
import { ensembleL, mean } from '../../../../shared-calc/fuel/fit/ensemble.ts';
import { fitGauge, type GaugeFit } from '../../../../shared-calc/fuel/fit/gauge-fit.ts';
import { nextPourAdvice } from '../../../../shared-calc/fuel/fit/next-pour.ts';
import { GRID_CELLS, volumeOnGridL } from '../../../../shared-calc/fuel/fit/slope-curve.ts';
import { seededNormals } from '../../../../shared-calc/numeric/seeded-normals.ts';
import { gaugeKinds, simulateTank } from './simulate-tanks.ts';

export interface AdviceStudy {
  tankCount: number;
  /** Change of the planning shortfall by the best next pour, as promised and as it came; below 0: narrower. */
  predictedRatio: number;
  realisedRatio: number;
  realisedSe: number;
}

const MARKS = 15;
const START_SD_L = 0.3;
/** Truths for each tank: what one pour brings is mostly chance. */
const TRUTHS = 4;

/**
 * For each tank the pour that is advised is made and the gauge fitted anew. The truth is one of the curves of the first
 * fit, so this tests the advice's formula, not the model behind it.
 */
export function studyAdvice(tankCount: number, firstSeed: number): AdviceStudy {
  const predicted: number[] = [];
  const realised: number[] = [];
  for (let index = 0; index < tankCount; index++) {
    const draws = seededNormals(firstSeed + 5_000_000 + index);
    const kind = gaugeKinds[index % gaugeKinds.length] ?? 'linear';
    const pourCount = 6 + Math.floor(draws.uniform() * 7);
    const { data } = simulateTank(kind, firstSeed + index, { resolutionRatio: 1 / 16, pourCount });
    const fit = fitGauge(data);
    if (!fit.enough) continue;
    const { firstPosition, lastPosition } = fit.rows;
    const marks = Array.from(
      { length: MARKS },
      (_, mark) => firstPosition + ((lastPosition - firstPosition) * mark) / (MARKS - 1),
    );
    const container = data.containers[0];
    if (container === undefined) throw new Error('a tank has a container');
    const pourL = 5;
    const [best] = nextPourAdvice(fit, marks, {
      index: 0,
      scaleSdRatio: container.scaleSdRatio,
      pourSdRatio: container.pourSdRatio,
      startSdL: START_SD_L,
      pourL,
    });
    if (best === undefined) throw new Error('there is always a best');
    predicted.push(best.shortfallThenL / best.shortfallNowL - 1);
    const nowL = shortfallL(fit, marks);
    const after: number[] = [];
    for (let truth = 0; truth < TRUTHS; truth++) {
      const curve = Math.floor(draws.uniform() * fit.refits.count);
      const { resolutionRatio, stickingSdRatio } = data.gauge;
      const needle =
        best.positionRatio + resolutionRatio * (draws.uniform() - 0.5) + stickingSdRatio * draws.normal();
      const trueL = volumeOnGridL(
        fit.refits.volumesL,
        Math.min(1, Math.max(0, needle)),
        curve * (GRID_CELLS + 1),
      );
      const scale = fit.refits.errors[curve * fit.rows.errorCount + (fit.rows.scaleColumns[0] ?? 0)] ?? 0;
      const pourSdL = pourL * container.pourSdRatio * Math.sqrt(Math.max(1, best.expectedL / pourL));
      const nominalL =
        (trueL - START_SD_L * draws.normal() - pourSdL * draws.normal()) /
        (1 + container.scaleSdRatio * scale);
      const more = fitGauge(withPour(data, best.positionRatio, Math.max(0.1, nominalL), pourSdL));
      if (more.enough) after.push(shortfallL(more, marks) / nowL - 1);
    }
    realised.push(mean(after));
  }
  const realisedRatio = mean(realised);
  const variance = mean(realised.map((value) => (value - realisedRatio) ** 2));
  return {
    tankCount: realised.length,
    predictedRatio: mean(predicted),
    realisedRatio,
    realisedSe: Math.sqrt(variance / realised.length),
  };
}

function withPour(data: FillData, positionRatio: number, volumeL: number, pourSdL: number): FillData {
  return {
    ...data,
    runs: [
      ...data.runs,
      {
        direction: 'filling',
        startUsableL: 0,
        startSdL: START_SD_L,
        rows: [{ volumeL, container: 0, pourSdL, reading: { at: 'scale', positionRatio }, setAside: false }],
      },
    ],
  };
}

/** Best estimate less planning figure, mean over the marks. */
function shortfallL(fit: GaugeFit, marks: readonly number[]): number {
  return mean(
    marks.map((position) => {
      const sorted = ensembleL(fit, position).toSorted((a, b) => a - b);
      const at = (prob: number) => sorted[Math.floor((sorted.length - 1) * prob)] ?? NaN;
      return at(0.5) - at(0.05);
    }),
  );
}
