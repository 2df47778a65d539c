import { endKnots } from '../../../shared-calc/fuel/curve-shape.ts';
import type { GaugeReading } from '../../../shared-calc/fuel/fill-run.ts';
import type { GaugeCurve } from '../../../shared-calc/fuel/gauge-curve.ts';
import { scaleMarks, type GaugeScale } from '../../../shared-calc/fuel/gauge-scale.ts';
import { fuelAtReading, type ReadingPrecision } from '../../../shared-calc/fuel/readout.ts';
import { enduranceOf } from '../../../shared-calc/performance/endurance.ts';
import { columnDuration } from '../../../shared-calc/units/duration-text.ts';
import type { UnitPreferences } from '../../../shared-calc/units/preferences.ts';
import { fromSi } from '../../../shared-calc/units/convert.ts';
import { shownFigure } from '../../../shared-calc/units/shown.ts';

export interface CardRow {
  mark: string;
  positionRatio: number;
  plan: string;
  /** '' where only an interval is known. */
  best: string;
  /** Level cruise less the reserve, '1:21'; 'none' without fuel, 'reserve only' below the reserve. */
  endurance: string;
}

/** More marks than this do not fit; then every second (third, ...) is printed. */
const mostRows = 16;

/** The unit that the gauge itself shows, else the one that the person reads volumes in. */
export function cardUnit(scale: GaugeScale, preferred: UnitPreferences['volume']): UnitPreferences['volume'] {
  return scale.kind === 'volume' ? scale.unit : preferred;
}

/** The marks of a card between the stops, each with its figures, rounded to the safe side. */
export function cardRows(
  curve: GaugeCurve,
  scale: GaugeScale,
  precision: ReadingPrecision,
  cruise: { fuelFlowLPerH: number; reserveS: number } | null,
  unit: UnitPreferences['volume'],
): CardRow[] {
  const between = scaleMarks(scale).flatMap(({ reading, text }) =>
    reading.at === 'scale' ? [{ reading, text }] : [],
  );
  const stride = Math.ceil(between.length / mostRows);
  return between
    .filter((_, index) => (index + 1) % stride === 0)
    .map(({ reading, text }) => {
      const { planningL, bestL } = fuelAtReading(curve, reading, precision);
      return {
        mark: text,
        positionRatio: reading.positionRatio,
        plan: shownFigure(planningL, 'volume', unit, 'plan'),
        best: bestL === null ? '' : shownFigure(bestL, 'volume', unit),
        endurance: cruise === null ? '' : enduranceText(planningL, cruise),
      };
    });
}

/** A round volume to plan on, where the needle has to stand for it. */
export interface TrueMark {
  positionRatio: number;
  figure: string;
}

/**
 * Where round volumes to plan on truly lie on the scale, between the readings that moved.
 * @param most how many there is room for
 */
export function trueMarks(
  curve: GaugeCurve,
  precision: ReadingPrecision,
  unit: UnitPreferences['volume'],
  most: number,
): TrueMark[] {
  const { first, last } = endKnots(curve);
  const planAt = (positionRatio: number) =>
    fromSi(fuelAtReading(curve, { at: 'scale', positionRatio }, precision).planningL, unit);
  const top = planAt(last.positionRatio);
  const step = [0.5, 1, 2, 5, 10, 20, 50, 100, 200].find((each) => top / each <= most) ?? 500;
  return Array.from({ length: Math.floor(top / step) }, (_, index) => (index + 1) * step)
    .filter((volume) => volume > planAt(first.positionRatio))
    .map((volume) => {
      let [low, high] = [first.positionRatio, last.positionRatio];
      // The figure to plan on never falls along the scale, so halving finds the lowest place that promises it.
      while (high - low > 1e-6) {
        const middle = (low + high) / 2;
        if (planAt(middle) >= volume) high = middle;
        else low = middle;
      }
      return { positionRatio: high, figure: String(volume) };
    });
}

/** What the stops say, for the line below the table. */
export function stopFigures(
  curve: GaugeCurve,
  precision: ReadingPrecision,
  unit: UnitPreferences['volume'],
): { emptyMost: string; fullPlan: string; fullMost: string } {
  const at = (reading: GaugeReading) => fuelAtReading(curve, reading, precision);
  const full = at({ at: 'fullStop' });
  return {
    emptyMost: shownFigure(at({ at: 'emptyStop' }).mostL, 'volume', unit, 'load'),
    fullPlan: shownFigure(full.planningL, 'volume', unit, 'plan'),
    fullMost: shownFigure(full.mostL, 'volume', unit, 'load'),
  };
}

/** The same day a year later, or the day before it where there is none. Common practice, no source. */
export function nextCheckDue(adoptedOn: string): string {
  const [year = '', month = '', day = ''] = adoptedOn.split('-');
  return `${String(Number(year) + 1)}-${month}-${month === '02' && day === '29' ? '28' : day}`;
}

function enduranceText(
  usableL: number,
  { fuelFlowLPerH, reserveS }: { fuelFlowLPerH: number; reserveS: number },
) {
  if (usableL === 0) return 'none';
  const { cruiseS } = enduranceOf({
    usableL,
    fuelFlowLPerH,
    taxiL: 0,
    climbL: 0,
    legalReserveS: reserveS,
    ownReserveS: 0,
  });
  return cruiseS === 0 ? 'reserve only' : columnDuration(cruiseS, 'duration left');
}
