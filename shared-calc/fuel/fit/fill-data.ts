import type { GaugeReading } from '../fill-run.ts';
import { requireRange } from '../../problem.ts';

/** What fuel was poured from or drained into, with its two kinds of error as standard uncertainties. */
export interface PourContainer {
  /** Its own scale, common to every pour from it: 0 to 0.2 of the nominal volume. */
  readonly scaleSdRatio: number;
  /** Each pour by itself: 0 to 0.2 of the nominal volume. */
  readonly pourSdRatio: number;
}

export interface MeasuredRow {
  /** Nominal litres since the row before, 0 to 1000. */
  readonly volumeL: number;
  /** Which of the containers; null only for a row without a pour (the reading at the start). */
  readonly container: number | null;
  /** Standard deviation of this pour by itself, 0 to 100 L; where it is missing, the container's share of the volume. */
  readonly pourSdL?: number;
  readonly reading: GaugeReading;
  /** The reading is not used; the volume still counts, because the fuel went in. */
  readonly setAside: boolean;
}

export interface MeasuredRun {
  readonly direction: 'filling' | 'draining';
  /** Usable litres before the first row, and how well that is known. */
  readonly startUsableL: number;
  readonly startSdL: number;
  readonly rows: readonly MeasuredRow[];
}

/** How the needle behaves, all as parts of its sweep between the stops. */
export interface GaugeBehaviour {
  /** Smallest division that the pilot reads to. */
  readonly resolutionRatio: number;
  /** Sticking: standard deviation of where the needle rests, 0.005 unless known. */
  readonly stickingSdRatio: number;
  /** Filling reads low by this and draining high by it; the curve lies between. */
  readonly lagRatio: number;
  readonly lagSdRatio: number;
}

/** Taken where nothing is known of the gauge; measured on simulated tanks (see the folder's README). */
export const DEFAULT_BEHAVIOUR = { stickingSdRatio: 0.005, lagRatio: 0.004, lagSdRatio: 0.003 } as const;

/** Everything known about one tank's gauge from runs alike in attitude, supply voltage and fuel. */
export interface FillData {
  /** Usable capacity in litres, 1 to 1000. */
  readonly capacityL: number;
  readonly gauge: GaugeBehaviour;
  readonly containers: readonly PourContainer[];
  readonly runs: readonly MeasuredRun[];
  /** How far the curve may bend where a person fixed it, 0.01 to 10 as in `SMOOTHNESS_GRID`; else averaged over. */
  readonly smoothness?: number | null;
}

export type RowKind = 'scale' | 'emptyStop' | 'fullStop';

/**
 * The readings that carry information, as arrays: nominal usable volume y before each, the loadings B of its
 * independent standard errors (start of each run, scale of each container, each pour), and where the needle was.
 */
export interface FitRows {
  readonly capacityL: number;
  readonly gauge: GaugeBehaviour;
  readonly rowCount: number;
  readonly errorCount: number;
  readonly kinds: readonly RowKind[];
  /** Where each row came from. */
  readonly places: readonly { runIndex: number; rowIndex: number }[];
  readonly nominalL: Float64Array;
  /** rowCount x errorCount, litres for one standard deviation. */
  readonly loadingsL: Float64Array;
  /** loadings times their transpose, rowCount x rowCount. */
  readonly sharedCovarianceL2: Float64Array;
  /** +1 filling, -1 draining. */
  readonly lagSigns: Float64Array;
  /** Ends of the cell in which the needle was, moved by the expected lag, within 0 to 1; for a stop, its edge twice. */
  readonly cellLow: Float64Array;
  readonly cellHigh: Float64Array;
  /** First and last position, by reading, that was not at a stop; the curve is read only between them. */
  readonly firstPosition: number;
  readonly lastPosition: number;
  /** Distinct readings that were not at a stop. */
  readonly distinctCount: number;
  /** Column of each container's scale error in the loadings. */
  readonly scaleColumns: readonly number[];
  /** Fixed by a person, or null: averaged over what the data support. */
  readonly smoothness: number | null;
}

/**
 * Turn runs into rows for the fit. At a stop only the tightest reading of each run is kept: the others say less.
 * @throws RangeProblem for a volume, container, start or reading outside its range
 */
export function fitRows(data: FillData): FitRows {
  requireData(data);
  const scaleColumns = data.containers.map((_, index) => data.runs.length + index);
  const firstPour = data.runs.length + data.containers.length;
  const pourCount = data.runs.reduce((sum, run) => sum + run.rows.filter((row) => row.volumeL > 0).length, 0);
  const errorCount = firstPour + pourCount;
  const kept: KeptRow[] = [];
  let pour = firstPour;

  data.runs.forEach((run, runIndex) => {
    const sign = run.direction === 'filling' ? 1 : -1;
    const errors = new Float64Array(errorCount);
    errors[runIndex] = run.startSdL;
    let nominalL = run.startUsableL;
    const stops: { emptyStop?: KeptRow; fullStop?: KeptRow } = {};
    run.rows.forEach((row, rowIndex) => {
      if (row.volumeL > 0) {
        const index = row.container ?? 0;
        const container = data.containers[index];
        if (container === undefined) throw new Error('checked by requireData');
        const scaleColumn = data.runs.length + index;
        nominalL += sign * row.volumeL;
        errors[scaleColumn] = (errors[scaleColumn] as number) + sign * row.volumeL * container.scaleSdRatio;
        errors[pour++] = sign * (row.pourSdL ?? row.volumeL * container.pourSdRatio);
      }
      if (row.setAside) return;
      const place = { runIndex, rowIndex };
      const found: KeptRow = { place, sign, nominalL, errors: errors.slice(), reading: row.reading };
      if (row.reading.at === 'scale') kept.push(found);
      else if (row.reading.at === 'emptyStop') {
        if (stops.emptyStop === undefined || nominalL > stops.emptyStop.nominalL) stops.emptyStop = found;
      } else if (stops.fullStop === undefined || nominalL < stops.fullStop.nominalL) stops.fullStop = found;
    });
    kept.push(...Object.values(stops));
  });
  return assemble(data, kept, errorCount, scaleColumns);
}

interface KeptRow {
  place: { runIndex: number; rowIndex: number };
  sign: number;
  nominalL: number;
  errors: Float64Array;
  reading: GaugeReading;
}

function assemble(
  data: FillData,
  kept: readonly KeptRow[],
  errorCount: number,
  scaleColumns: readonly number[],
): FitRows {
  const rowCount = kept.length;
  const half = data.gauge.resolutionRatio / 2;
  const loadingsL = new Float64Array(rowCount * errorCount);
  const sharedCovarianceL2 = new Float64Array(rowCount * rowCount);
  const cellLow = new Float64Array(rowCount);
  const cellHigh = new Float64Array(rowCount);
  const positions: number[] = [];
  kept.forEach((row, index) => {
    loadingsL.set(row.errors, index * errorCount);
    const moved = row.sign * data.gauge.lagRatio;
    if (row.reading.at === 'scale') {
      positions.push(row.reading.positionRatio);
      cellLow[index] = within01(row.reading.positionRatio - half + moved);
      cellHigh[index] = within01(row.reading.positionRatio + half + moved);
    } else {
      const edge = within01((row.reading.at === 'emptyStop' ? half : 1 - half) + moved);
      cellLow[index] = edge;
      cellHigh[index] = edge;
    }
  });
  for (let i = 0; i < rowCount; i++)
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = 0; k < errorCount; k++)
        sum += (loadingsL[i * errorCount + k] as number) * (loadingsL[j * errorCount + k] as number);
      sharedCovarianceL2[i * rowCount + j] = sum;
      sharedCovarianceL2[j * rowCount + i] = sum;
    }
  return {
    capacityL: data.capacityL,
    gauge: data.gauge,
    rowCount,
    errorCount,
    kinds: kept.map((row) => row.reading.at),
    places: kept.map((row) => row.place),
    nominalL: Float64Array.from(kept, (row) => row.nominalL),
    loadingsL,
    sharedCovarianceL2,
    lagSigns: Float64Array.from(kept, (row) => row.sign),
    cellLow,
    cellHigh,
    firstPosition: Math.min(...positions),
    lastPosition: Math.max(...positions),
    distinctCount: new Set(positions.map((position) => Math.round(position * 1e6))).size,
    scaleColumns,
    smoothness: data.smoothness ?? null,
  };
}

function within01(position: number): number {
  return Math.min(1, Math.max(0, position));
}

function requireData(data: FillData): void {
  requireRange('capacityL', data.capacityL, 1, 1000, 'L');
  requireRange('gauge.resolutionRatio', data.gauge.resolutionRatio, 0.001, 0.5, '');
  requireRange('gauge.stickingSdRatio', data.gauge.stickingSdRatio, 0.0005, 0.1, '');
  requireRange('gauge.lagRatio', data.gauge.lagRatio, 0, 0.1, '');
  requireRange('gauge.lagSdRatio', data.gauge.lagSdRatio, 0, 0.1, '');
  if (data.smoothness != null) requireRange('smoothness', data.smoothness, 0.01, 10, '');
  data.containers.forEach((container, index) => {
    requireRange(`containers[${String(index)}].scaleSdRatio`, container.scaleSdRatio, 0, 0.2, '');
    requireRange(`containers[${String(index)}].pourSdRatio`, container.pourSdRatio, 0, 0.2, '');
  });
  data.runs.forEach((run, runIndex) => {
    const at = `runs[${String(runIndex)}]`;
    requireRange(`${at}.startUsableL`, run.startUsableL, -100, data.capacityL, 'L');
    requireRange(`${at}.startSdL`, run.startSdL, 0, data.capacityL, 'L');
    run.rows.forEach((row, rowIndex) => {
      const rowAt = `${at}.rows[${String(rowIndex)}]`;
      requireRange(`${rowAt}.volumeL`, row.volumeL, 0, 1000, 'L');
      requireRange(`${rowAt}.pourSdL`, row.pourSdL ?? 0, 0, 100, 'L');
      if (row.volumeL > 0)
        requireRange(`${rowAt}.container`, row.container ?? NaN, 0, data.containers.length - 1, '');
      if (row.reading.at === 'scale')
        requireRange(`${rowAt}.positionRatio`, row.reading.positionRatio, 0, 1, '');
    });
  });
}
