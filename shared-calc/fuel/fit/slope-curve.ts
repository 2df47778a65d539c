/**
 * The family of curves that a gauge may have: usable volume over the needle's position,
 * f(x) = a + integral from 0 to x of exp(w(s)) ds, with w piecewise linear. Since the slope is an exponential,
 * every member rises, whatever w is, and no constraint has to be kept while fitting.
 * Source: J. O. Ramsay, Estimating smooth monotone functions, 1998 (the form by the logarithm of the slope).
 */

/** Equal intervals of the needle's sweep on which w is linear. 12, 20 and 30 were tried and cover alike. */
export const KNOT_INTERVALS = 16;
/** Unknowns of a curve: its volume at the empty stop, and w at each knot. */
export const CURVE_UNKNOWNS = KNOT_INTERVALS + 2;
/** Cells of the midpoint rule for the integral; f is linear between them. */
export const GRID_CELLS = 128;
const CELLS_PER_KNOT = GRID_CELLS / KNOT_INTERVALS;

/** Weight of the knot to the left of each cell's middle, the same in every interval. */
const LEFT_WEIGHT = Float64Array.from(
  { length: CELLS_PER_KNOT },
  (_, cell) => 1 - (cell + 0.5) / CELLS_PER_KNOT,
);

/**
 * Volumes on the grid's lines (GRID_CELLS + 1 of them) for one curve, and its slope in each cell.
 * @param curve     a in litres, then w at the knots, as logarithms of litres for the whole sweep
 * @param volumesL  filled: f at 0, 1/128, ... 1
 * @param slopesL   filled: litres for the whole sweep, one a cell
 */
export function fillGrid(curve: Float64Array, volumesL: Float64Array, slopesL: Float64Array): void {
  let volumeL = curve[0] as number;
  volumesL[0] = volumeL;
  let cell = 0;
  for (let knot = 0; knot < KNOT_INTERVALS; knot++) {
    const left = curve[knot + 1] as number;
    const right = curve[knot + 2] as number;
    for (let within = 0; within < CELLS_PER_KNOT; within++) {
      const weight = LEFT_WEIGHT[within] as number;
      const slopeL = Math.exp(weight * left + (1 - weight) * right);
      slopesL[cell] = slopeL;
      volumeL += slopeL / GRID_CELLS;
      volumesL[++cell] = volumeL;
    }
  }
}

/**
 * f at a position by the grid.
 * @param position 0 (empty stop) to 1 (full stop); the caller keeps it there
 * @param offset   where in `volumesL` this curve's grid begins
 */
export function volumeOnGridL(volumesL: Float64Array, position: number, offset = 0): number {
  const scaled = position * GRID_CELLS;
  const cell = Math.min(GRID_CELLS - 1, Math.floor(scaled));
  const low = volumesL[offset + cell] as number;
  return low + (scaled - cell) * ((volumesL[offset + cell + 1] as number) - low);
}

/** Running sums of d f / d w on the grid's lines, row by row: (GRID_CELLS + 1) x (KNOT_INTERVALS + 1). */
export function fillGradientGrid(slopesL: Float64Array, gradient: Float64Array): void {
  const width = KNOT_INTERVALS + 1;
  gradient.fill(0, 0, width);
  for (let cell = 0; cell < GRID_CELLS; cell++) {
    const knot = Math.floor(cell / CELLS_PER_KNOT);
    const weight = LEFT_WEIGHT[cell - knot * CELLS_PER_KNOT] as number;
    const stepL = (slopesL[cell] as number) / GRID_CELLS;
    const from = cell * width;
    const to = from + width;
    // Only the knots up to this cell have been touched; the rest stay zero.
    for (let k = 0; k <= knot; k++) gradient[to + k] = gradient[from + k] as number;
    gradient[to + knot] = (gradient[to + knot] as number) + weight * stepL;
    gradient[to + knot + 1] = (gradient[from + knot + 1] as number) + (1 - weight) * stepL;
    for (let k = knot + 2; k < width; k++) gradient[to + k] = 0;
  }
}

/** Add `factor` times d f(position) / d(a, w) to a row of CURVE_UNKNOWNS entries that begins at `at`. */
export function addGradient(
  gradient: Float64Array,
  position: number,
  factor: number,
  row: Float64Array,
  at: number,
): void {
  const width = KNOT_INTERVALS + 1;
  const scaled = position * GRID_CELLS;
  const cell = Math.min(GRID_CELLS - 1, Math.floor(scaled));
  const share = scaled - cell;
  const low = cell * width;
  const high = low + width;
  row[at] = (row[at] as number) + factor;
  for (let k = 0; k < width; k++) {
    const below = gradient[low + k] as number;
    row[at + 1 + k] =
      (row[at + 1 + k] as number) + factor * (below + share * ((gradient[high + k] as number) - below));
  }
}
