import { InputProblem, requireRange } from '../problem.ts';

/**
 * A curve through points that rises where they rise, falls where they fall and overshoots nowhere: piecewise cubic
 * Hermite with slopes by Fritsch and Butland (the weighted harmonic mean of the neighbouring chords; at the ends the
 * three-point formula, held to the sign and three times the chord).
 * @param xs rising, at least 2, finite
 * @param ys as many, finite
 * @returns the curve as a function of x between the first and the last of `xs`; it throws RangeProblem outside them
 * @throws RangeProblem naming an element that is not finite
 * @throws InputProblem when there are fewer than two points, the lengths differ, or xs do not rise
 * @source F. N. Fritsch and J. Butland, A Method for Constructing Local Monotone Piecewise Cubic Interpolants,
 *   SIAM J. Sci. Stat. Comput. 5 (1984) 300
 * @example monotoneCubic([0, 1, 2], [0, 1, 4])(1) is 1
 */
export function monotoneCubic(xs: readonly number[], ys: readonly number[]): (x: number) => number {
  requirePoints(xs, ys);
  const x = Float64Array.from(xs);
  const y = Float64Array.from(ys);
  const slopes = slopesOf(x, y);
  const last = x.length - 1;
  const at = (values: Float64Array, i: number): number => values[i] ?? NaN;
  return (query) => {
    requireRange('x', query, at(x, 0), at(x, last), '');
    // The last interval whose start is not beyond the query.
    let low = 0;
    let high = last;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (at(x, middle) <= query) low = middle;
      else high = middle;
    }
    const width = at(x, low + 1) - at(x, low);
    const t = (query - at(x, low)) / width;
    const rise = at(y, low + 1) - at(y, low);
    const startSlope = at(slopes, low) * width;
    const endSlope = at(slopes, low + 1) * width;
    // Hermite form around the nearer knot, so that each knot is met exactly.
    if (t <= 0.5) {
      return (
        at(y, low) +
        t * (startSlope + t * (3 * rise - 2 * startSlope - endSlope + t * (startSlope + endSlope - 2 * rise)))
      );
    }
    const u = 1 - t;
    return (
      at(y, low + 1) -
      u * (endSlope + u * (3 * rise - 2 * endSlope - startSlope + u * (startSlope + endSlope - 2 * rise)))
    );
  };
}

function requirePoints(xs: readonly number[], ys: readonly number[]): void {
  if (xs.length < 2) throw new InputProblem('xs', `has ${String(xs.length)} points; at least 2 are needed`);
  if (ys.length !== xs.length)
    throw new InputProblem('ys', `${String(ys.length)} for ${String(xs.length)} xs`);
  xs.forEach((x, i) => {
    requireRange(`xs[${String(i)}]`, x, -1e300, 1e300, '');
    requireRange(`ys[${String(i)}]`, ys[i] ?? NaN, -1e300, 1e300, '');
    if (i > 0 && x <= (xs[i - 1] ?? NaN)) {
      throw new InputProblem(`xs[${String(i)}]`, `is ${String(x)}, not above the one before it`);
    }
  });
}

function slopesOf(x: Float64Array, y: Float64Array): Float64Array {
  const intervals = x.length - 1;
  const widths = Float64Array.from({ length: intervals }, (_, i) => (x[i + 1] ?? NaN) - (x[i] ?? NaN));
  const chords = widths.map((width, i) => ((y[i + 1] ?? NaN) - (y[i] ?? NaN)) / width);
  const [chord = 0] = chords;
  if (intervals === 1) return Float64Array.of(chord, chord);
  const slopes = new Float64Array(x.length);
  slopes[0] = endSlope(widths, chords, 0, 1);
  slopes[intervals] = endSlope(widths, chords, intervals - 1, intervals - 2);
  for (let i = 1; i < intervals; i++) {
    const before = chords[i - 1] ?? 0;
    const after = chords[i] ?? 0;
    if (before * after <= 0) continue;
    const widthBefore = widths[i - 1] ?? 0;
    const widthAfter = widths[i] ?? 0;
    const weightBefore = widthBefore + 2 * widthAfter;
    const weightAfter = 2 * widthBefore + widthAfter;
    slopes[i] = (weightBefore + weightAfter) / (weightBefore / before + weightAfter / after);
  }
  return slopes;
}

function endSlope(widths: Float64Array, chords: Float64Array, end: number, next: number): number {
  const width = widths[end] ?? 0;
  const nextWidth = widths[next] ?? 0;
  const chord = chords[end] ?? 0;
  const nextChord = chords[next] ?? 0;
  const slope = ((2 * width + nextWidth) * chord - width * nextChord) / (width + nextWidth);
  if (slope * chord <= 0) return 0;
  if (chord * nextChord <= 0 && Math.abs(slope) > 3 * Math.abs(chord)) return 3 * chord;
  return slope;
}
