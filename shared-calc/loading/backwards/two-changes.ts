import type { LoadingRecord } from '../records.ts';
import type { Answer, SingleFound, Way } from './answer.ts';
import { fuelAnswer, nearestFuel, sharingsOf } from './fuel-answers.ts';
import { keptBy } from './kept.ts';
import { stepsOf, type Step } from './steps.ts';
import { askedOf, changed, wayOf, type Subject } from './subject.ts';

/** So many pairs are offered. */
const MOST_OFFERED = 3;
/** Steps that are tried two by two: at most 496 flights are followed. */
const MOST_STEPS = 32;
/** Steps after which fuel is solved for, which takes as long as some dozen flights. */
const MOST_WITH_FUEL = 8;

/** A pair that is known to keep every limit; how surely is worked out for those that are offered. */
interface Pair {
  answer: () => Answer[];
  handledKg: number;
}

/** A step that does not do it alone, and how near it comes. */
interface Tried {
  step: Step;
  after: LoadingRecord;
  flightShare: number;
}

/**
 * Two changes that together bring a loading inside, where neither does alone: of things, seats and the order of tanks two
 * by two, and one of them with other fuel in all tanks together. The least mass carried (the fuel with it) first; each is a
 * whole flight that keeps every limit. The number of flights followed is bounded, whatever is aboard.
 */
export function twoChanges(subject: Subject): Answer[] {
  const alone = stepsOf(subject).flatMap((step): Tried[] => {
    const after = changed(subject, step.apply);
    const asked = askedOf(subject, after);
    if (asked === null) return [];
    const { all, flightShare } = keptBy(asked);
    // What does it alone is offered alone.
    return all ? [] : [{ step, after, flightShare }];
  });
  return [...pairsOfSteps(subject, alone), ...pairsWithFuel(subject, alone)]
    .sort((a, b) => a.handledKg - b.handledKg)
    .slice(0, MOST_OFFERED)
    .flatMap(({ answer }) => answer());
}

function pairsOfSteps(subject: Subject, alone: readonly Tried[]): Pair[] {
  const steps = alone.slice(0, MOST_STEPS).map(({ step }) => step);
  const both = steps.flatMap((first, i) =>
    steps
      .slice(i + 1)
      .filter((second) => areApart(first, second))
      .map((second) => ({ first, second, handledKg: first.handledKg + second.handledKg })),
  );
  const found: Pair[] = [];
  for (const { first, second, handledKg } of both.sort((a, b) => a.handledKg - b.handledKg)) {
    const after = changed(subject, (copy) => {
      first.apply(copy);
      second.apply(copy);
    });
    const asked = askedOf(subject, after);
    if (asked === null || !keptBy(asked).all) continue;
    const answer = () => {
      const way = wayOf(subject, after, null);
      return way === null ? [] : [together(first.found, second.found, [way])];
    };
    found.push({ answer, handledKg });
    if (found.length === MOST_OFFERED) break;
  }
  return found;
}

/** Things that are both left behind are one choice of what to leave, which is solved for elsewhere. */
function areApart(first: Step, second: Step): boolean {
  if (first.found.kind === 'leave behind' && second.found.kind === 'leave behind') return false;
  return !first.touches.some((id) => second.touches.includes(id));
}

/** Those steps that leave least to be done are tried. */
function pairsWithFuel(subject: Subject, alone: readonly Tried[]): Pair[] {
  const [sharing] = sharingsOf(subject);
  // Where fuel does it alone, it needs no help.
  if (sharing === undefined || nearestFuel(subject, sharing) !== null) return [];
  const densityKgPerL = Math.max(0, ...subject.inputs.aircraft.tanks.map((tank) => tank.densityKgPerL));
  const nearest = [...alone].sort((a, b) => b.flightShare - a.flightShare).slice(0, MOST_WITH_FUEL);
  return nearest.flatMap(({ step, after }): Pair[] => {
    const asked = askedOf(subject, after);
    if (asked === null) return [];
    const then: Subject = { ...subject, inputs: { ...subject.inputs, loading: after }, asked };
    const wanted = nearestFuel(then, sharing);
    if (wanted === null) return [];
    const answer = () => fuelAnswer(then, wanted).map(({ found, ways }) => together(step.found, found, ways));
    return [{ answer, handledKg: step.handledKg + wanted.farL * densityKgPerL }];
  });
}

function together(first: SingleFound, second: SingleFound, ways: readonly Way[]): Answer {
  return { found: { kind: 'two changes', first, second }, ways };
}
