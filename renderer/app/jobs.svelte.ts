import type { Progress } from '../../main/requests/define.ts';
import type { InputOf, OutputOf, RequestName } from '../../main/requests/table.ts';
import type { Client } from './client.ts';

/** Long work under way: its last report, and a way to stop it. */
export interface Job {
  call: string;
  named: string;
  report: Progress | null;
  isStopping: boolean;
}

/** Every long request that runs now. It goes on while the person looks at other screens. */
export class Jobs {
  list = $state<Job[]>([]);
  readonly #client: Client;

  constructor(client: Client) {
    this.#client = client;
  }

  hear(call: string, report: Progress): void {
    const job = this.list.find((each) => each.call === call);
    if (job !== undefined) job.report = report;
  }

  cancel(call: string): void {
    const job = this.list.find((each) => each.call === call);
    if (job !== undefined) job.isStopping = true;
    this.#client.bridge.cancel(call);
  }

  /**
   * Run a long request with its progress shown.
   * @param named what is being done, for the line above the progress ('Import of ostrey.csv')
   * @param call  names it for `cancel`
   * @throws Refused, also when it was cancelled
   */
  async run<N extends RequestName>(
    name: N,
    input: InputOf<N>,
    named: string,
    call: string = crypto.randomUUID(),
  ): Promise<OutputOf<N>> {
    this.list = [...this.list, { call, named, report: null, isStopping: false }];
    try {
      return await this.#client.ask(name, input, call);
    } finally {
      this.list = this.list.filter((job) => job.call !== call);
    }
  }
}
