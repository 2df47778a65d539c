import { companiesFor } from '../../../shared-calc/loading/backwards/companies.ts';
import { keptBy } from '../../../shared-calc/loading/backwards/kept.ts';
import { remediesFor } from '../../../shared-calc/loading/backwards/remedies.ts';
import { roomLeft } from '../../../shared-calc/loading/backwards/room-left.ts';
import { subjectOf } from '../../../shared-calc/loading/backwards/subject.ts';
import { normalDraws, type NormalDraws } from '../../../shared-calc/loading/odds.ts';
import { InputProblem, RangeProblem } from '../../../shared-calc/problem.ts';
import { backwardsHeading, sayAnswer, sayCompany } from '../../../shared-calc/wording/backwards.ts';
import { listWords } from '../../../shared-calc/wording/list-words.ts';
import type { AnswersJob, AnswersReply, SaidAnswers } from './answers-job.ts';

// Questions asked backwards take tens of frames, so they are answered beside the window.
addEventListener('message', ({ data }: MessageEvent<AnswersJob>) => {
  postMessage(replyTo(data));
});

const seed = 1;
const made = new Map<string, NormalDraws>();

function draws(dimensions: number, count: number): NormalDraws {
  const key = `${String(dimensions)} ${String(count)}`;
  const found = made.get(key) ?? normalDraws(dimensions, count, seed);
  made.set(key, found);
  return found;
}

function replyTo(job: AnswersJob): AnswersReply {
  const { number } = job;
  if (job.about === 'loading') return { number, about: 'loading', said: orNull(() => saidOf(job)) };
  const { inputs, outing, units, names } = job;
  const companies = orNull(() => companiesFor(inputs, outing, units, draws));
  return {
    number,
    about: 'outing',
    companies:
      companies?.map((company) => {
        const who = listWords(company.passengerIds.map((id) => names[id] ?? ''));
        return { who, said: sayCompany(company, `With ${who}`, inputs, units) };
      }) ?? null,
  };
}

function saidOf({ inputs, units }: AnswersJob): SaidAnswers | null {
  const subject = subjectOf(inputs, units, draws);
  if (subject === null) return null;
  const { all, result } = keptBy(subject.asked);
  // Compared with nothing: no answer would be worth anything.
  if (result.unchecked.length > 0) return null;
  const answers = all ? roomLeft(subject) : remediesFor(subject);
  return {
    heading: backwardsHeading(all, answers),
    isInside: all,
    answers: answers.map((answer) => sayAnswer(answer, inputs, units)),
  };
}

/** What the loading itself cannot be is said by the sheet's own verdict. */
function orNull<T>(work: () => T): T | null {
  try {
    return work();
  } catch (error) {
    if (error instanceof InputProblem || error instanceof RangeProblem) return null;
    throw error;
  }
}
