import type { Outing } from '../../../shared-calc/loading/backwards/companies.ts';
import type { AnswerUnits } from '../../../shared-calc/loading/backwards/subject.ts';
import type { LoadingInputs } from '../../../shared-calc/loading/case-of.ts';
import type { SaidAnswer, SaidCompany } from '../../../shared-calc/wording/backwards.ts';

/** A question about a loading that is answered beside the window. `number` comes back with the reply. */
export type AnswersJob = {
  readonly number: number;
  readonly inputs: LoadingInputs;
  readonly units: AnswerUnits;
} & (
  | { readonly about: 'loading' }
  | { readonly about: 'outing'; readonly outing: Outing; readonly names: Readonly<Record<string, string>> }
);

export interface SaidAnswers {
  readonly heading: string;
  readonly isInside: boolean;
  readonly answers: readonly SaidAnswer[];
}

/** null: something in the loading has to be entered or mended first; the sheet says what. */
export type AnswersReply = { readonly number: number } & (
  | { readonly about: 'loading'; readonly said: SaidAnswers | null }
  | {
      readonly about: 'outing';
      readonly companies: readonly { readonly who: string; readonly said: SaidCompany }[] | null;
    }
);
