import type { LoadingVerdict } from './loading.ts';
import { listWords } from './list-words.ts';

/** How a loading or a scenario stood when somebody looked at it. */
export interface SeenVerdict {
  readonly id: string;
  readonly verdict: LoadingVerdict['verdict'] | 'does not fit';
  /** "inside by 11 mm" */
  readonly inShort: string;
  /** The same for as long as its own entries are the same. */
  readonly entriesMark: string;
}

/** A saved loading, or a scenario of the review table, as it stands. */
export interface StandingVerdict extends SeenVerdict {
  readonly name: string;
}

/** One whose verdict changed though nobody touched its own entries. */
export interface VerdictChange {
  readonly id: string;
  readonly name: string;
  readonly was: SeenVerdict;
  readonly is: StandingVerdict;
}

/**
 * What a change elsewhere (a weighing, an arm, a limit, somebody's mass) did to the verdicts of saved loadings. A loading
 * that was itself changed is no news to the person who changed it, and is left out; so is one that is new or gone.
 */
export function verdictChanges(
  before: readonly SeenVerdict[],
  after: readonly StandingVerdict[],
): VerdictChange[] {
  const old = new Map(before.map((each) => [each.id, each]));
  return after.flatMap((is) => {
    const was = old.get(is.id);
    return was === undefined || was.entriesMark !== is.entriesMark || was.verdict === is.verdict
      ? []
      : [{ id: is.id, name: is.name, was, is }];
  });
}

/**
 * What is to be kept as seen: the verdict of before for as long as its change is to be told, else that of now. Those that
 * are gone are forgotten.
 * @param isLookedAt whether somebody looks at one right now, and so at its change
 */
export function seenNow(
  seen: readonly SeenVerdict[],
  standing: readonly StandingVerdict[],
  isLookedAt: (id: string) => boolean = () => false,
): SeenVerdict[] {
  const changes = new Map(verdictChanges(seen, standing).map(({ id, was }) => [id, was]));
  return standing.map(({ id, verdict, inShort, entriesMark }) => {
    const was = isLookedAt(id) ? undefined : changes.get(id);
    return was ?? { id, verdict, inShort, entriesMark };
  });
}

/**
 * The change as sentences, those that are outside now first: "“To the lakes” is now outside by 4 mm (was inside by
 * 8 mm)."
 * @param changes at least one, for anything to be said
 */
export function verdictChangesSentence(changes: readonly VerdictChange[]): string {
  const said = (verdict: LoadingVerdict['verdict']) => {
    const these = changes.filter(({ is }) => is.verdict === verdict);
    const [first] = these;
    if (first === undefined) return [];
    if (these.length === 1) return [`“${first.name}” is now ${first.is.inShort} (was ${first.was.inShort}).`];
    const now = verdict === 'not checked' ? 'can no longer be checked' : `are now ${verdict}`;
    return [`${listWords(these.map(({ name }) => `“${name}”`))} ${now}.`];
  };
  return [...said('outside'), ...said('not checked'), ...said('inside')].join(' ');
}
