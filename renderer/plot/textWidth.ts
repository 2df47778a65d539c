let context: CanvasRenderingContext2D | null | undefined;

/**
 * Width of a text in the plot's font (semi-condensed, tabular figures).
 * @param sizePx the font's size in CSS pixels
 */
export function textWidthPx(text: string, sizePx: number, isStrong = false): number {
  context ??= document.createElement('canvas').getContext('2d');
  // A browser without a canvas still gets labels: the mean width of the font's figures and letters.
  if (context === null) return text.length * sizePx * 0.52;
  context.font = `${isStrong ? '600' : '400'} ${String(sizePx)}px 'Encode Sans', 'Segoe UI', sans-serif`;
  context.fontStretch = 'semi-condensed';
  return context.measureText(text).width;
}
