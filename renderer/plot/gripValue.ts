/** What a grip may stand at. */
export interface GripRange {
  min: number;
  max: number;
  /** One arrow key; a drag falls on multiples of it too. */
  step: number;
}

/** The nearest value that the grip may stand at; the ends are allowed even off the grid of steps. */
export function snapped(value: number, { min, max, step }: GripRange): number {
  if (value <= min) return min;
  if (value >= max) return max;
  const onGrid = Math.round(value / step) * step;
  // Adding up steps like 0.1 leaves dust behind the twelfth figure.
  return Math.min(max, Math.max(min, Number(onGrid.toPrecision(12))));
}

/**
 * Where a key leads: arrows one step, with Shift or as page keys ten, Home and End to the ends.
 * @returns null where the key means nothing to a grip
 */
export function keyed(key: string, isShifted: boolean, value: number, range: GripRange): number | null {
  const big = isShifted ? 10 : 1;
  const steps: Record<string, number> = {
    ArrowUp: big,
    ArrowRight: big,
    ArrowDown: -big,
    ArrowLeft: -big,
    PageUp: 10,
    PageDown: -10,
  };
  if (key === 'Home') return range.min;
  if (key === 'End') return range.max;
  const count = steps[key];
  return count === undefined ? null : snapped(value + count * range.step, range);
}
