import type { LoadingResult, LimitMargin } from '../../../shared-calc/loading/assess.ts';
import { armLimitsAt, type EnvelopeBands } from '../../../shared-calc/loading/envelope.ts';
import { isOfCg } from '../../../shared-calc/loading/limits.ts';
import { pointAfterL, pointAt, type FlightPoint } from '../../../shared-calc/loading/point.ts';
import type { PlotPoint } from './coordinates.ts';

type Place = (massKg: number, momentKgM: number) => number;

/** Pieces into which each stretch between two events is drawn. */
const pieceCount = 16;

/** The flight between two amounts burned, as points of the plot: every event lies on it exactly. */
export function flightLine(result: LoadingResult, place: Place, fromL = 0, toL = Infinity): PlotPoint[] {
  const { model, path } = result;
  const lastL = path.burnedL[path.nodes - 1] ?? 0;
  const endL = Math.min(toL, lastL);
  const at = new Set<number>([fromL, endL]);
  for (let node = 0; node + 1 < path.nodes; node += 1) {
    const a = path.burnedL[node] ?? 0;
    const b = path.burnedL[node + 1] ?? a;
    for (let i = 0; i <= pieceCount; i += 1) {
      const burnedL = a + ((b - a) * i) / pieceCount;
      if (burnedL > fromL && burnedL < endL) at.add(burnedL);
    }
  }
  return [...at]
    .sort((a, b) => a - b)
    .map((burnedL) => {
      const point = pointAfterL(model, path, burnedL);
      return [place(point.massKg, point.momentKgM), point.massKg];
    });
}

/** Where the aeroplane is so many seconds after take-off; null before and after the flight. */
export function pointAtTime(result: LoadingResult, timeS: number): FlightPoint | null {
  const { model, path } = result;
  for (let node = Math.max(0, path.takeOff); node + 1 < path.nodes; node += 1) {
    const a = path.timeS[node] ?? 0;
    const b = path.timeS[node + 1] ?? a;
    if (timeS < a || timeS > b || b === a) continue;
    const lengthL = (path.burnedL[node + 1] ?? 0) - (path.burnedL[node] ?? 0);
    return pointAt(model, path, node, ((timeS - a) / (b - a)) * lengthL);
  }
  return null;
}

/** Every half hour of the flight, by its seconds after take-off. */
export function halfHours(result: LoadingResult): { timeS: number; point: FlightPoint }[] {
  const marks: { timeS: number; point: FlightPoint }[] = [];
  for (let timeS = 1800; timeS <= result.exhausted.afterTakeOffS; timeS += 1800) {
    const point = pointAtTime(result, timeS);
    if (point !== null) marks.push({ timeS, point });
  }
  return marks;
}

/** A named instant of the flight, for the table and beside the plot. */
export interface FlightEvent {
  name: string;
  point: FlightPoint;
  kind: 'ramp' | 'take-off' | 'tank' | 'landing' | 'exhausted';
}

/** Ramp, take-off, every tank run empty, landing, usable fuel exhausted; in the order of the flight. */
export function flightEvents(result: LoadingResult): FlightEvent[] {
  const { model, path } = result;
  const events: FlightEvent[] = [];
  for (let node = 0; node < path.nodes; node += 1) {
    const point = pointAt(model, path, node, 0);
    const add = (name: string, kind: FlightEvent['kind']) => events.push({ name, point, kind });
    if (node === 0) add('Ramp', 'ramp');
    if (point.marks.includes('take-off')) add('Take-off', 'take-off');
    const emptied = model.aeroplane.tanks.find(({ id }) => id === point.emptiedTankId);
    const isEnd = point.marks.includes('usable fuel exhausted');
    if (emptied !== undefined && !isEnd) add(`${emptied.name} empty`, 'tank');
    if (point.marks.includes('landing')) add('Landing', 'landing');
    if (isEnd) add('Usable fuel exhausted', 'exhausted');
  }
  return events;
}

/** Every change to another tank in flight that is not because one ran empty: by the pilot's order of taking turns. */
export function tankChanges(result: LoadingResult): { name: string; point: FlightPoint }[] {
  const { model, path } = result;
  const changes: { name: string; point: FlightPoint }[] = [];
  for (let node = Math.max(0, path.takeOff) + 1; node < path.nodes; node += 1) {
    const point = pointAt(model, path, node, 0);
    if (point.changedToTankId === null || point.emptiedTankId !== null) continue;
    const name = model.aeroplane.tanks.find(({ id }) => id === point.changedToTankId)?.name ?? '';
    changes.push({ name: `to ${name.charAt(0).toLowerCase()}${name.slice(1)}`, point });
  }
  return changes;
}

/** Forward and aft limit with their figures, named near the lower end of what is seen of them; places in arm and mass. */
export function limitNames(
  envelope: EnvelopeBands,
  massDomain: readonly [number, number],
  figureOf: (armM: number) => string,
): { at: PlotPoint; text: string }[] {
  const low = Math.max(massDomain[0], envelope.lowestKg);
  const high = Math.min(massDomain[1], envelope.highestKg);
  if (high <= low) return [];
  const massKg = low + 0.12 * (high - low);
  const { forwardM, aftM } = armLimitsAt(envelope, massKg);
  return [
    { at: [forwardM, massKg], text: `forward limit ${figureOf(forwardM)}` },
    { at: [aftM, massKg], text: `aft limit ${figureOf(aftM)}` },
  ];
}

/**
 * The event at which the margin is least; null where it is least between events. The verdict takes the worst figures of
 * fuel and the drawing the best, so that the same event may come a few minutes apart: it is known by what happens there.
 */
export function leastEvent(result: LoadingResult, events: readonly FlightEvent[]): FlightEvent | null {
  const worst = result.least?.worst ?? null;
  if (worst === null) return null;
  const there = events.filter(
    ({ point }) =>
      Math.abs(worst.burnedL - point.burnedL) < 1e-6 ||
      (worst.emptiedTankId !== null && worst.emptiedTankId === point.emptiedTankId) ||
      worst.marks.some((mark) => point.marks.includes(mark)),
  );
  // Without taxi fuel ramp and take-off are one point; the sentence calls it the take-off.
  return there.find(({ kind }) => kind !== 'ramp') ?? there[0] ?? null;
}

/** The least margin as a measured line: from where it is least, along the arm or up to a mass. */
export function leastMeasureOf(
  result: LoadingResult,
  place: Place,
): { from: PlotPoint; to: PlotPoint } | null {
  const { least } = result;
  if (least?.worst == null) return null;
  const { worst, limit } = least;
  const from: PlotPoint = [place(worst.massKg, worst.momentKgM), worst.massKg];
  if (limit.kind === 'forward' || limit.kind === 'aft') {
    const { forwardM, aftM } = armLimitsAt(limit.envelope, worst.massKg);
    const armM = limit.kind === 'forward' ? forwardM : aftM;
    return { from, to: [place(worst.massKg, armM * worst.massKg), worst.massKg] };
  }
  return limit.kind === 'most' || limit.kind === 'least' ? { from, to: [from[0], limit.limitKg] } : null;
}

/** The envelope that holds in flight, whose margins the table gives; null where there is none. */
export function flightEnvelope(result: LoadingResult): EnvelopeBands | null {
  const limit = result.margins.find(
    (each) => each.limit.kind === 'aft' && each.limit.phase === 'flight',
  )?.limit;
  return limit !== undefined && 'envelope' in limit ? limit.envelope : null;
}

/** A stretch of the flight outside a limit, as drawn. */
export interface OutsideStretch {
  margin: LimitMargin;
  /** On the drawn path, which takes the best figures of fuel. */
  fromL: number;
  toL: number;
  /** As the verdict says them, by the worst figures. */
  fromS: number;
  toS: number;
  /** Usable fuel left where it begins, by the same figures. */
  leftL: number;
  isFromStart: boolean;
  isToEnd: boolean;
}

/**
 * Stretches outside a limit in flight: where the heavy line turns hollow. The verdict's stretches may come from fuller
 * tanks and reach beyond the drawn flight, which then ends them.
 */
export function outsideStretches(result: LoadingResult): OutsideStretch[] {
  const endL = result.exhausted.burnedL;
  const startL = result.takeOff.burnedL;
  return result.margins.flatMap((margin) => {
    if (!isOfCg(margin.limit) && margin.limit.kind !== 'most') return [];
    return margin.outside.flatMap((stretch) => {
      const fromL = Math.min(stretch.fromL, endL);
      const toL = Math.min(stretch.toL, endL);
      return [
        {
          margin,
          fromL,
          toL,
          fromS: stretch.fromS,
          toS: stretch.toS,
          leftL: stretch.leftL,
          isFromStart: stretch.fromL <= startL + 1e-6,
          isToEnd: stretch.untilExhausted || toL >= endL - 1e-6,
        },
      ];
    });
  });
}
