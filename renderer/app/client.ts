import type { Problem } from '../../main/requests/problem.ts';
import type { InputOf, OutputOf, RequestName } from '../../main/requests/table.ts';
import type { Bridge } from './bridge.ts';
import { plainJson } from './plain-json.ts';

/** A refusal as the window meets it: its message is the sentence to show. */
export class Refused extends Error {
  readonly problem: Problem;

  constructor(problem: Problem) {
    super(problem.sentence);
    this.name = 'Refused';
    this.problem = problem;
  }
}

/** The window's only way to the library, typed by the request table. */
export interface Client {
  /** @throws Refused with a sentence for the person */
  ask<N extends RequestName>(name: N, input: InputOf<N>, call?: string): Promise<OutputOf<N>>;
  bridge: Bridge;
}

export function makeClient(bridge: Bridge): Client {
  return {
    bridge,
    async ask(name, input, call = crypto.randomUUID()) {
      // A plain copy: what a screen holds may be wrapped for its own reactions, which no bridge can carry.
      const plain: unknown = JSON.parse(plainJson(input));
      const answer = await bridge.request(name, plain, call);
      if (!answer.ok) throw new Refused(answer.problem);
      // The table checked the answer against the schema from which this type derives.
      return answer.output as OutputOf<typeof name>;
    },
  };
}

/** The sentence to show for whatever a request threw. */
export function sentenceOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
