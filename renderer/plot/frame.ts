import type { ScaleLinear } from 'd3';
import { createContext } from 'svelte';

/** A place on the figure, in CSS pixels from its upper left corner. */
export interface Px {
  x: number;
  y: number;
}

export interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** What every part of a plot draws with. All of it follows the figure's size and the person's text scale. */
export interface Frame {
  /** The whole figure. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** The plotting area inside the margins. */
  readonly box: Box;
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  /** How much larger than usual the person's text is: every distance of the look is multiplied by it. */
  readonly r: number;
  /** Width of a text in the plot's font, at a size in rem. */
  textWidthPx(text: string, sizeRem: number, isStrong?: boolean): number;
  /** Reference to the clip that keeps lines inside the plotting area. */
  readonly clip: string;
}

export const [getFrame, setFrame] = createContext<Frame>();

/** Numbers in a drawing's attributes: a tenth of a pixel is finer than any screen shows. */
export function px(value: number): string {
  const rounded = Math.round(value * 10) / 10;
  return String(rounded === 0 ? 0 : rounded);
}

/** A path through points, closed or open. */
export function pathThrough(points: readonly Px[], isClosed = false): string {
  if (points.length === 0) return '';
  return `M${points.map((point) => `${px(point.x)},${px(point.y)}`).join('L')}${isClosed ? 'Z' : ''}`;
}
