/** A piece of a sentence; at most one of an answer is strong, so that the window can set one thing in bold. */
export type Part = { readonly text: string; readonly strong: boolean };

export type Sentence = readonly Part[];

/** What stands in text as it is. */
export function plain(text: string): Part {
  return { text, strong: false };
}

/** The one thing of an answer that is to be seen first. */
export function strong(text: string): Part {
  return { text, strong: true };
}

/** Sentences as plain text, for paper, scripts and screen readers. */
export function textOf(sentences: readonly Sentence[]): string {
  return sentences.map((sentence) => sentence.map((part) => part.text).join('')).join(' ');
}
