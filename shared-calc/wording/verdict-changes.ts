import type { LoadingVerdict } from './loading.ts';
import { listWords } from './list-words.ts';

/** A saved loading as it stood at one time. */
export interface StandingVerdict {
  readonly id: string;
  readonly name: string;
  readonly verdict: LoadingVerdict['verdict'];
  /** "inside by 11 mm" */
  readonly inShort: string;
  /** The same for as long as the loading's own entries are the same. */
  readonly entriesMark: string;
}

/** A loading whose verdict changed though nobody touched its own entries. */
export interface VerdictChange {
  readonly id: string;
  readonly name: string;
  readonly was: StandingVerdict;
  readonly is: StandingVerdict;
}

/**
 * What a change elsewhere (a weighing, an arm, a limit, somebody's mass) did to the verdicts of saved loadings. A loading
 * that was itself changed is no news to the person who changed it, and is left out; so is one that is new or gone.
 */
export function verdictChanges(
  before: readonly StandingVerdict[],
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
