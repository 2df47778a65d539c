import type { GaugeCurve } from '../../../shared-calc/fuel/gauge-curve.ts';

/** Far below what any gauge shows, and far above what two processors may differ in. */
const sameL = 1e-4;

/** Whether two curves are one and the same for a person: the same method and places, and the same litres there. */
export function isSameCurve(a: GaugeCurve, b: GaugeCurve): boolean {
  const [figuresA, figuresB] = [figuresOf(a), figuresOf(b)];
  return (
    a.method === b.method &&
    a.resolutionRatio === b.resolutionRatio &&
    a.usableCapacityL === b.usableCapacityL &&
    figuresA.length === figuresB.length &&
    figuresA.every((figure, index) => Math.abs(figure - (figuresB[index] ?? Infinity)) < sameL)
  );
}

function figuresOf(curve: GaugeCurve): number[] {
  return curve.knots.flatMap((knot) => Object.values(knot) as number[]);
}
