/** What a person can add so that the file can be read after all. */
export type FileProblemCode = 'file' | 'month-needed' | 'zone-needed' | 'mapping-needed';

/** A file that cannot be read as a whole; the message is a sentence for the person. */
export class FileProblem extends Error {
  readonly need: FileProblemCode;

  constructor(sentence: string, need: FileProblemCode = 'file') {
    super(sentence);
    this.name = 'FileProblem';
    this.need = need;
  }
}
