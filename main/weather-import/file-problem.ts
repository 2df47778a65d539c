/** A file that cannot be read as a whole; the message is a sentence for the person. */
export class FileProblem extends Error {
  constructor(sentence: string) {
    super(sentence);
    this.name = 'FileProblem';
  }
}
