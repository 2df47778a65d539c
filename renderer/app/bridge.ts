import type { Answer } from '../../main/requests/run.ts';
import type { ServiceEvent } from '../../main/workers/service.ts';

/**
 * What the window may ask of whatever it runs in: the same few abilities from the Electron preload and from
 * the loopback host. The window cannot tell which one it talks to.
 */
export interface Bridge {
  /** Run a request of the table; `call` names it for progress and cancel. Refusals come back as data. */
  request(name: string, input: unknown, call: string): Promise<Answer>;
  cancel(call: string): void;
  /** Hear progress and changes until the returned function is called. */
  listen(listener: (event: ServiceEvent) => void): () => void;
  /** A path under which the program can read a file that the person dropped or chose. */
  pathOf(file: File): Promise<string>;
  /** Open the system's way to print this page. */
  print(): Promise<void>;
}

declare global {
  interface Window {
    /** Put there by the Electron preload; absent in a browser, where app/loopback-bridge.ts stands in. */
    tarewing?: Bridge;
  }
}
