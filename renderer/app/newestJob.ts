/**
 * Work beside the window, one piece at a time and always the newest: what was asked in between is skipped.
 * Made while a component lives; `end` stops it.
 */
export class NewestJob<Job, Reply> {
  readonly #worker: Worker;
  #isBusy = false;
  #next: { job: Job } | null = null;

  /**
   * @param onReply hears each reply, with the piece of work that it answers
   * @param onFailed hears that the work could not be run at all
   */
  constructor(worker: Worker, onReply: (reply: Reply) => void, onFailed: () => void) {
    this.#worker = worker;
    worker.addEventListener('message', ({ data }: MessageEvent<Reply>) => {
      this.#isBusy = false;
      onReply(data);
      this.#send();
    });
    worker.addEventListener('error', () => {
      this.#isBusy = false;
      onFailed();
      this.#send();
    });
  }

  ask(job: Job): void {
    this.#next = { job };
    this.#send();
  }

  end(): void {
    this.#worker.terminate();
  }

  #send(): void {
    if (this.#isBusy || this.#next === null) return;
    this.#isBusy = true;
    this.#worker.postMessage(this.#next.job);
    this.#next = null;
  }
}
