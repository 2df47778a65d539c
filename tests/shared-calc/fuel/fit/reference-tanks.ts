import { readFileSync } from 'node:fs';
import type { VolumeBand } from '../../../../shared-calc/fuel/fit/band.ts';
import type { FillData, MeasuredRow } from '../../../../shared-calc/fuel/fit/fill-data.ts';

interface BandColumns {
  planning5L: number[];
  medianL: number[];
  upper95L: number[];
}

interface TankFile {
  tanks: {
    id: string;
    capacityL: number;
    unusableL: number;
    gauge: { emptyStop: number; fullStop: number; resolution: number };
    containers: { id: string; scaleStdUncertaintyPercent: number; pourStdUncertaintyPercent: number }[];
    runs: {
      direction: 'filling' | 'draining';
      start: { usableL: number; stdUncertaintyL: number };
      rows: { volumeL: number; container: string | null; reading: number; atStop: 'empty' | 'full' | null }[];
    }[];
    truth: { reading: number[]; usableL: number[] };
    reference: { sampled: BandColumns; perturbAndRefit: BandColumns };
  }[];
}

/** A simulated fill test with its truth and two bands that other code found for it. */
export interface ReferenceTank {
  id: string;
  data: FillData;
  positions: number[];
  truthL: number[];
  sampled: BandColumns;
  perturbAndRefit: BandColumns;
}

/** The ten tanks of tests/reference/fuel-tanks.json: simulated with numpy and scipy, not measured on any aeroplane. */
export function referenceTanks(): ReferenceTank[] {
  const path = new URL('../../../reference/fuel-tanks.json', import.meta.url);
  const file = JSON.parse(readFileSync(path, 'utf8')) as TankFile;
  return file.tanks.map((tank) => {
    const { emptyStop, fullStop, resolution } = tank.gauge;
    const position = (reading: number) => (reading - emptyStop) / (fullStop - emptyStop);
    const rowOf = (row: TankFile['tanks'][0]['runs'][0]['rows'][0]): MeasuredRow => ({
      volumeL: row.volumeL,
      container: row.container === null ? null : tank.containers.findIndex(({ id }) => id === row.container),
      reading:
        row.atStop === 'empty'
          ? { at: 'emptyStop' }
          : row.atStop === 'full'
            ? { at: 'fullStop' }
            : { at: 'scale', positionRatio: position(row.reading) },
      setAside: false,
    });
    return {
      id: tank.id,
      data: {
        capacityL: tank.capacityL - tank.unusableL,
        gauge: {
          resolutionRatio: resolution / (fullStop - emptyStop),
          stickingSdRatio: 0.005,
          lagRatio: 0.004,
          lagSdRatio: 0.003,
        },
        containers: tank.containers.map((container) => ({
          scaleSdRatio: container.scaleStdUncertaintyPercent / 100,
          pourSdRatio: container.pourStdUncertaintyPercent / 100,
        })),
        runs: tank.runs.map((run) => ({
          direction: run.direction,
          startUsableL: run.start.usableL,
          startSdL: run.start.stdUncertaintyL,
          rows: run.rows.map(rowOf),
        })),
      },
      positions: tank.truth.reading.map(position),
      truthL: tank.truth.usableL,
      sampled: tank.reference.sampled,
      perturbAndRefit: tank.reference.perturbAndRefit,
    };
  });
}

/** Three columns of a tank's file as bands. */
export function bandsOf({ planning5L, medianL, upper95L }: ReferenceTank['sampled']): VolumeBand[] {
  return planning5L.map((lowL, i) => ({ lowL, bestL: medianL[i] ?? NaN, highL: upper95L[i] ?? NaN }));
}
