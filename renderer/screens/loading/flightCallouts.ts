import type { LoadingResult } from '../../../shared-calc/loading/assess.ts';
import { isOfCg } from '../../../shared-calc/loading/limits.ts';
import { pointAfterL, type FlightPoint } from '../../../shared-calc/loading/point.ts';
import { shownDuration } from '../../../shared-calc/units/duration-text.ts';
import { instantText } from '../../../shared-calc/wording/loading-parts.ts';
import type { Units } from '../../app/units.svelte.ts';
import { flightEvents, leastEvent, outsideStretches } from './flightDrawing.ts';

/** A point of the flight with what is said of it beside the plot. */
export interface FlightCallout {
  point: FlightPoint;
  lines: string[];
  /** The least margin, at most one. */
  isStrong?: boolean;
}

/** Take-off, tanks run empty, landing, the end of the fuel, every limit met and left again; the least margin is strong. */
export function flightCallouts(result: LoadingResult, units: Pick<Units, 'shown'>): FlightCallout[] {
  const worst = result.least?.worst ?? null;
  const events = flightEvents(result).filter(({ kind }) => kind !== 'ramp');
  const least = leastEvent(result, events);
  const list = events.map((event): FlightCallout => {
    const { name, point, kind } = event;
    const isLeast = event === least;
    const at = isLeast && worst !== null ? worst : point;
    const when = kind === 'take-off' ? units.shown(at.massKg, 'mass', 'load') : instantText(at.afterTakeOffS);
    return {
      point: at,
      lines: isLeast ? [leastWords(result, units), name.toLowerCase(), when] : [name.toLowerCase(), when],
      isStrong: isLeast,
    };
  });
  if (worst !== null && !list.some(({ isStrong }) => isStrong))
    list.push({
      point: worst,
      lines: [leastWords(result, units), isOnRamp(worst) ? 'on the ramp' : instantText(worst.afterTakeOffS)],
      isStrong: true,
    });
  for (const { margin, fromL, toL, fromS, toS, leftL, isFromStart, isToEnd } of outsideStretches(result)) {
    if (margin.limit.kind === 'most') continue;
    if (!isFromStart)
      list.push({
        point: pointAfterL(result.model, result.path, fromL),
        lines: [
          `${margin.limit.kind} limit met`,
          instantText(fromS),
          `${units.shown(leftL, 'volume', 'plan')} left`,
        ],
      });
    if (!isToEnd)
      list.push({
        point: pointAfterL(result.model, result.path, toL),
        lines: ['inside again', shownDuration(toS, 'until inside')],
      });
  }
  return list;
}

function isOnRamp({ marks }: FlightPoint): boolean {
  return marks.includes('ramp') && !marks.includes('take-off');
}

function leastWords({ least }: LoadingResult, units: Pick<Units, 'shown'>): string {
  if (least === null) return '';
  const quantity = isOfCg(least.limit) ? 'arm' : 'mass';
  return least.margin < 0
    ? `${units.shown(-least.margin, quantity, 'excess')} outside`
    : units.shown(least.margin, quantity, 'margin');
}
