import { requireRange } from '../problem.ts';
import { bracketedRoot } from './bracketed-root.ts';

/** A closed stretch of numbers. */
export interface NumberRange {
  readonly from: number;
  readonly to: number;
}

/** Halvings after which a part is as good as a point: a sixty-five-thousandth of the whole. */
const MOST_HALVINGS = 16;
/** A function that lies on zero over a stretch is never told apart from its neighbours: then halving ends earlier. */
const MOST_CALLS = 6000;
const FEW_HALVINGS = 9;

/**
 * Where a function is not negative: the union of closed ranges, each end solved for.
 *
 * Between two places the function can change by no more than its steepest slope allows. So a part whose two ends are
 * far enough above (or below) zero is wholly so and is done with; any other is halved. What is left in the end is so
 * short that a dip below zero would be no deeper than half a step times the slope; a change of sign in it is solved for.
 * @param f        defined from `from` to `to`; steady but for the places in `jumps`
 * @param from, to finite, from <= to
 * @param steepest most change of f for one unit, 0 or more; a bound, need not be sharp
 * @param jumps    places where f may jump; there it takes the higher of its two sides' values
 * @returns ranges by rising order; a single place comes back as a range of no length
 * @throws RangeProblem naming from, to or steepest
 * @source B. O. Shubert, A Sequential Method Seeking the Global Maximum of a Function, SIAM J. Numer. Anal. 9, 1972
 *         (the bound by the slope)
 */
export function rangesNotNegative(
  f: (x: number) => number,
  from: number,
  to: number,
  steepest: number,
  jumps: readonly number[] = [],
): NumberRange[] {
  requireRange('from', from, -1e300, 1e300, '');
  requireRange('to', to, from, 1e300, '');
  requireRange('steepest', steepest, 0, 1e300, '');
  const search: Search = {
    f,
    steepest,
    aside: ASIDE * Math.max(Math.abs(from), Math.abs(to), to - from),
    calls: 0,
  };
  if (to === from) return f(from) >= 0 ? [{ from, to }] : [];
  const cuts = [from, ...jumps.filter((x) => x > from && x < to).sort((a, b) => a - b), to];
  const found: NumberRange[] = [];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const a = cuts[i] ?? from;
    const b = cuts[i + 1] ?? to;
    if (f(a) >= 0) found.push({ from: a, to: a });
    // A jump belongs to neither side: each is followed from just beside it.
    const left = i === 0 ? a : a + search.aside;
    const right = i + 2 === cuts.length ? b : b - search.aside;
    if (right > left) follow(search, left, f(left), right, f(right), 0, found);
  }
  if (f(to) >= 0) found.push({ from: to, to });
  return joined(found, 4 * search.aside);
}

/** Of the largest value: far beyond what callers count as rounding, far below what a person sees. */
const ASIDE = 1e-8;

interface Search {
  readonly f: (x: number) => number;
  readonly steepest: number;
  /** How far from a jump its sides are looked at. */
  readonly aside: number;
  calls: number;
}

function follow(
  search: Search,
  a: number,
  fa: number,
  b: number,
  fb: number,
  halvings: number,
  found: NumberRange[],
): void {
  const reach = search.steepest * (b - a);
  if (fa >= 0 && fb >= 0 && fa + fb >= reach) {
    found.push({ from: a, to: b });
    return;
  }
  if (fa < 0 && fb < 0 && -fa - fb >= reach) return;
  if (halvings >= (search.calls > MOST_CALLS ? FEW_HALVINGS : MOST_HALVINGS)) {
    settle(search, a, fa, b, fb, found);
    return;
  }
  const middle = (a + b) / 2;
  const fm = search.f(middle);
  search.calls++;
  follow(search, a, fa, middle, fm, halvings + 1, found);
  follow(search, middle, fm, b, fb, halvings + 1, found);
}

function settle({ f }: Search, a: number, fa: number, b: number, fb: number, found: NumberRange[]): void {
  if (fa >= 0 && fb >= 0) found.push({ from: a, to: b });
  else if (fa >= 0) found.push({ from: a, to: lastKept(f, a, b) });
  else if (fb >= 0) found.push({ from: lastKept(f, b, a), to: b });
}

/** The place next to the change of sign that is itself not negative. */
function lastKept(f: (x: number) => number, kept: number, broken: number): number {
  const root = bracketedRoot(f, kept, broken);
  let step = 2 * Number.EPSILON * Math.max(Math.abs(kept), Math.abs(broken), 1e-300);
  let at = root;
  while (f(at) < 0) {
    if (Math.abs(at - kept) <= step) return kept;
    at += Math.sign(kept - at) * step;
    step *= 2;
  }
  return at;
}

function joined(found: readonly NumberRange[], gap: number): NumberRange[] {
  const out: NumberRange[] = [];
  for (const next of found) {
    const last = out.at(-1);
    if (last === undefined || next.from > last.to + gap) out.push(next);
    else if (next.to > last.to) out[out.length - 1] = { from: last.from, to: next.to };
  }
  return out;
}
