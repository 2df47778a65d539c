import { ticks } from 'd3';

/**
 * Round values between two ends, about as far apart as wished.
 * @param lengthPx  of the axis
 * @param spacingPx wished between two ticks, more than 0
 */
export function ticksFor(domain: readonly [number, number], lengthPx: number, spacingPx: number): number[] {
  const [from, to] = domain[0] <= domain[1] ? domain : [domain[1], domain[0]];
  return ticks(from, to, Math.max(2, Math.round(lengthPx / spacingPx)));
}
