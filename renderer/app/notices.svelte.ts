/** How a notice begins: what was done, what deserves a look, what could hurt. */
export type NoticeWord = 'Done' | 'Look at' | 'Take care';

export interface Notice {
  id: number;
  word: NoticeWord;
  sentence: string;
  /** Verbs in the notice's own line ('Undo', 'show them'). */
  verbs: { word: string; run: () => void }[];
}

/** How long a 'Done' stays: it says nothing that the index does not show as well. */
const doneStaysMs = 12_000;
/** More at once would cover the sheet; the oldest go first. */
const mostCount = 3;

/** What the window has to say, newest last. */
export class Notices {
  list = $state<Notice[]>([]);
  #lastId = 0;

  say(word: NoticeWord, sentence: string, verbs: Notice['verbs'] = []): void {
    // The same sentence twice is one notice: an error that repeats must not push others away.
    this.list = this.list.filter((notice) => notice.sentence !== sentence);
    this.#lastId += 1;
    const id = this.#lastId;
    this.list = [...this.list, { id, word, sentence, verbs }].slice(-mostCount);
    if (word === 'Done')
      setTimeout(() => {
        this.putAway(id);
      }, doneStaysMs);
  }

  putAway(id: number): void {
    this.list = this.list.filter((notice) => notice.id !== id);
  }
}
