import { contours } from 'd3';

/** A field of values on an even grid, row by row, with one column and one row of padding on every side. */
export interface PaddedGrid {
  values: readonly number[];
  columns: number;
  rows: number;
}

export interface Contour {
  threshold: number;
  /** Closed rings, in columns and rows of the grid without its padding (0 is the first sample). */
  rings: readonly (readonly (readonly [number, number])[])[];
  /** The same without what only runs along the frame. */
  lines: readonly (readonly (readonly [number, number])[])[];
}

/** d3 puts a sample at the middle of its cell; the padding takes one more. */
const offset = 1.5;

/**
 * Where a field reaches each threshold, for tints (rings of 'at least') and for isolines.
 * Rings are closed along the outer frame, half a cell outside the padding: clip them to the plotting area.
 * @param grid with its padding: repeated at the ends for hours of a day, copied outward where nothing repeats
 */
export function contourLines(grid: PaddedGrid, thresholds: readonly number[]): Contour[] {
  const { columns, rows } = grid;
  const make = contours().size([columns, rows]).smooth(true);
  return thresholds.map((threshold) => {
    const found = make.contour([...grid.values], threshold);
    const rings = found.coordinates.flat() as [number, number][][];
    const shift = ([x, y]: [number, number]) => [x - offset, y - offset] as const;
    return {
      threshold,
      rings: rings.map((ring) => ring.map(shift)),
      lines: rings.flatMap((ring) => withoutFrame(ring, columns, rows).map((line) => line.map(shift))),
    };
  });
}

/** Cut a closed ring where it runs along the frame. */
function withoutFrame(ring: [number, number][], columns: number, rows: number): [number, number][][] {
  // A corner of the frame is cut off: both ends of that piece lie on the frame, on different sides.
  const isOnFrame = ([x, y]: [number, number]) => x === 0 || y === 0 || x === columns || y === rows;
  const pieces: [number, number][][] = [];
  let piece: [number, number][] = [];
  ring.forEach((point, index) => {
    const before = ring[index - 1];
    if (before !== undefined && isOnFrame(before) && isOnFrame(point)) {
      if (piece.length > 1) pieces.push(piece);
      piece = [];
    }
    piece.push(point);
  });
  if (piece.length > 1) pieces.push(piece);
  return joinEnds(pieces);
}

/** A ring starts anywhere: its last piece and its first are one line where they meet. */
function joinEnds(pieces: [number, number][][]): [number, number][][] {
  const first = pieces[0];
  const last = pieces.at(-1);
  if (first === undefined || last === undefined || first === last) return pieces;
  const start = first[0];
  const end = last.at(-1);
  if (start === undefined || end === undefined || start[0] !== end[0] || start[1] !== end[1]) return pieces;
  return [[...last.slice(0, -1), ...first], ...pieces.slice(1, -1)];
}
