/** A refusal for a person: what happened, what is safe, what to do. Crosses every door as data. */
export interface Problem {
  /** For programs: stable, lower case with hyphens. */
  code: ProblemCode;
  /** For people: one or more whole sentences. */
  sentence: string;
  /** The input's fields that caused it, as paths ('stations[2].armM'), each with its own sentence. */
  fields: { path: string; sentence: string }[];
}

export type ProblemCode =
  | 'unknown-request'
  | 'input-refused'
  | 'not-found'
  | 'in-use'
  | 'read-only'
  | 'library-damaged'
  | 'library-foreign'
  | 'library-newer'
  | 'library-older'
  | 'library-busy'
  | 'disk'
  | 'cancelled'
  | 'file-refused'
  /** A list of bare reports: their year and month have to be given. */
  | 'month-needed'
  /** A file in local standard time that does not tell its zone. */
  | 'zone-needed'
  /** A table of no known kind: its columns have to be mapped. */
  | 'mapping-needed'
  | 'internal';

/** An error whose message is already a sentence for the person who uses the window. */
export class Refusal extends Error {
  readonly problem: Problem;

  constructor(code: ProblemCode, sentence: string, fields: Problem['fields'] = []) {
    super(sentence);
    this.name = 'Refusal';
    this.problem = { code, sentence, fields };
  }
}
