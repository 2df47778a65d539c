/** An ellipse on the figure. */
export interface EllipsePx {
  rx: number;
  ry: number;
  angleDeg: number;
}

/**
 * The ellipse that holds a share of a bivariate normal distribution, as drawn.
 * @param varianceX, varianceY in squared data units; @param covarianceXY likewise
 * @param pxPerX, pxPerY how many pixels one data unit is; negative where the axis runs against the screen's
 * @param share of the probability inside, above 0 and below 1 (0.9: nine in ten)
 * @source the radius of a 2-D standard normal is Rayleigh-distributed: k = sqrt(-2 ln(1 - share))
 */
export function ellipseOf(
  { varianceX, varianceY, covarianceXY }: { varianceX: number; varianceY: number; covarianceXY: number },
  pxPerX: number,
  pxPerY: number,
  share: number,
): EllipsePx {
  const a = varianceX * pxPerX * pxPerX;
  const d = varianceY * pxPerY * pxPerY;
  const b = covarianceXY * pxPerX * pxPerY;
  const middle = (a + d) / 2;
  const spread = Math.hypot((a - d) / 2, b);
  const k = Math.sqrt(-2 * Math.log(1 - share));
  return {
    rx: k * Math.sqrt(middle + spread),
    // Fully correlated errors leave a line; rounding must not take the root of less than nothing.
    ry: k * Math.sqrt(Math.max(0, middle - spread)),
    angleDeg: (0.5 * Math.atan2(2 * b, a - d) * 180) / Math.PI,
  };
}
