import { M_PER_FT, MS_PER_KT } from '../../../shared-calc/units/constants.ts';
import type { Planned, PlannerChange } from './planner.svelte.ts';

type Asked = Planned['asked'];

export type LimitPart =
  | 'takeOffMostM'
  | 'runwayShareMost'
  | 'climbLeastMs'
  | 'climbGradientLeast'
  | 'densityAltitudeMostM'
  | 'crosswindMostMs'
  | 'tailwindMostMs'
  | 'gustMostMs';

/** A limit that can be asked of a departure, as the question's sentence and its list of more name it. */
export interface LimitOffered {
  part: LimitPart;
  /** In the list of more. */
  word: string;
  /** In the sentence, before the figure and after it. */
  words: string;
  after: string;
  label: string;
  quantity: 'distance' | 'share' | 'climbRate' | 'gradient' | 'altitude' | 'speed';
  minSi: number;
  maxSi: number;
  /** What it begins at when it is added: a light aeroplane's usual figure, to be changed (no source). */
  first: number | undefined;
  /** As asked; null where it is not. */
  value: number | null;
  /** Whether aeroplane, runway and phase let it be asked. */
  isThere: boolean;
}

const FIRST_RUNWAY_SHARE = 0.8;
const FIRST_CLIMB_MS = (300 * M_PER_FT) / 60;
const FIRST_GRADIENT = 0.04;

/** Every limit that the question can have here, in the order of its sentence. */
export function limitsOffered(asked: Asked, lengthText: (lengthM: number) => string): LimitOffered[] {
  const isLanding = asked.phase === 'landing';
  const distance = isLanding ? asked.hasLanding : asked.hasTakeOff;
  const name = isLanding ? 'Landing' : 'Take-off';
  const isShare = asked.runwayShareMost !== null;
  const offered: LimitOffered[] = [
    {
      part: 'takeOffMostM',
      word: `${asked.phase} distance`,
      words: `the ${asked.phase} within`,
      after: '',
      label: `${name} within`,
      quantity: 'distance',
      minSi: 30,
      maxSi: asked.availableM ?? 8000,
      first: undefined,
      // A share of the runway says it in its own way.
      value: isShare ? null : asked.takeOffMostM,
      isThere: distance,
    },
    {
      part: 'runwayShareMost',
      word: `${asked.phase} within a share of the runway`,
      words: `the ${asked.phase} within`,
      after: asked.availableM === null ? '' : ` of the ${lengthText(asked.availableM)} of runway`,
      label: `${name} within a share of the runway`,
      quantity: 'share',
      minSi: 0.1,
      maxSi: 1,
      first: FIRST_RUNWAY_SHARE,
      value: asked.runwayShareMost,
      isThere: distance,
    },
    {
      part: 'climbLeastMs',
      word: 'climb',
      words: 'the climb at least',
      after: '',
      label: 'Climb at least',
      quantity: 'climbRate',
      minSi: 0,
      maxSi: 20,
      first: FIRST_CLIMB_MS,
      value: asked.climbLeastMs,
      isThere: !isLanding && asked.hasClimb,
    },
    {
      part: 'climbGradientLeast',
      word: 'climb gradient',
      words: 'the climb gradient at least',
      after: '',
      label: 'Climb gradient at least',
      quantity: 'gradient',
      minSi: 0,
      maxSi: 0.5,
      first: FIRST_GRADIENT,
      value: asked.climbGradientLeast,
      isThere: !isLanding && asked.hasClimbGradient,
    },
    {
      part: 'densityAltitudeMostM',
      word: 'density altitude',
      words: 'the density altitude at most',
      after: '',
      label: 'Density altitude at most',
      quantity: 'altitude',
      minSi: -1000,
      maxSi: 6000,
      first: 100 * M_PER_FT * Math.floor((asked.field.elevationM + 2500 * M_PER_FT) / (100 * M_PER_FT)),
      value: asked.densityAltitudeMostM,
      isThere: true,
    },
    {
      part: 'crosswindMostMs',
      word: 'crosswind',
      words: 'the crosswind at most',
      after: '',
      label: 'Crosswind at most',
      quantity: 'speed',
      minSi: 0,
      maxSi: 30,
      first: 10 * MS_PER_KT,
      value: asked.crosswindMostMs,
      isThere: asked.runway !== null,
    },
    {
      part: 'tailwindMostMs',
      word: 'tailwind',
      words: 'the tailwind at most',
      after: '',
      label: 'Tailwind at most',
      quantity: 'speed',
      minSi: 0,
      maxSi: 30,
      first: 5 * MS_PER_KT,
      value: asked.tailwindMostMs,
      isThere: asked.runway !== null,
    },
    {
      part: 'gustMostMs',
      word: 'gusts',
      words: 'gusts at most',
      after: '',
      label: 'Gusts at most',
      quantity: 'speed',
      minSi: 0,
      maxSi: 60,
      first: 20 * MS_PER_KT,
      value: asked.gustMostMs,
      isThere: true,
    },
  ];
  return offered.filter(({ isThere, value }) => isThere || value !== null);
}

/** What changes in the question when a limit's figure does; an empty one is not asked any more. */
export function limitPut(
  limits: readonly LimitOffered[],
  part: LimitPart,
  value: number | null,
): PlannerChange {
  // Without any limit there is no question: the last one goes back to the usual ones instead.
  const isLast = value === null && limits.filter((each) => each.value !== null).length === 1;
  if (isLast) return { [part]: null, takeOffMostM: undefined, densityAltitudeMostM: undefined, ...noShare };
  if (part === 'runwayShareMost')
    return value === null ? { ...noShare, takeOffMostM: null } : { runwayShareMost: value };
  return { [part]: value };
}

/** What changes when a limit is added: metres and a share of the runway stand for one another. */
export function limitAdded({ part, first }: LimitOffered): PlannerChange {
  if (part === 'runwayShareMost') return { runwayShareMost: first, takeOffMostM: undefined };
  if (part === 'takeOffMostM') return { takeOffMostM: undefined, ...noShare };
  return { [part]: first };
}

const noShare = { runwayShareMost: undefined };
