import type { GaugeReading } from '../../../shared-calc/fuel/fill-run.ts';
import { printedSpan, type GaugeScale } from '../../../shared-calc/fuel/gauge-scale.ts';
import type { FillTestRecord } from '../../../shared-calc/fuel/records.ts';

/**
 * A test of a gauge that runs the other way: what it prints falls as the tank fills. Its scale becomes plain numbers
 * with their ends exchanged, and every reading keeps the figure that the gauge showed.
 */
export function turnedRound(test: FillTestRecord): FillTestRecord {
  return {
    ...test,
    scale: turnedScale(test.scale),
    runs: test.runs.map((run) => ({
      ...run,
      pours: run.pours.map((pour) => ({
        ...pour,
        reading: pour.reading === null ? null : turned(pour.reading),
        written:
          pour.written === null
            ? null
            : {
                ...pour.written,
                reading: pour.written.reading === null ? null : turned(pour.written.reading),
              },
      })),
    })),
    pins: test.pins.map((pin) => ({ ...pin, positionRatio: 1 - pin.positionRatio })),
  };
}

function turnedScale(scale: GaugeScale): GaugeScale {
  const { start, end, step } = printedSpan(scale);
  return { kind: 'numbers', atEmpty: end, atFull: start, step };
}

function turned(reading: GaugeReading): GaugeReading {
  if (reading.at === 'emptyStop') return { at: 'fullStop' };
  if (reading.at === 'fullStop') return { at: 'emptyStop' };
  return { at: 'scale', positionRatio: 1 - reading.positionRatio };
}
