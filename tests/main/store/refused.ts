import { Refusal, type Problem } from '../../../main/requests/problem.ts';

/** The problem with which something refuses; fails where it does not. */
export async function refused(attempt: () => unknown): Promise<Problem> {
  try {
    await attempt();
  } catch (error) {
    if (error instanceof Refusal) return error.problem;
    throw error;
  }
  throw new Error('Nothing was refused.');
}
