/** What crosses between the double of the `electron` module (in the program's process) and its windows (in the test's). */
export type FromProgram =
  | { type: 'open'; window: number; url: string; preload: string }
  | { type: 'close'; window: number }
  | { type: 'focus'; window: number }
  | { type: 'print'; window: number }
  | { type: 'send'; window: number; channel: string; args: unknown[] }
  | { type: 'second-instance'; userData: string }
  | { type: 'answer'; call: number; value: unknown }
  | { type: 'failed'; call: number; message: string };

export type ToProgram =
  | { type: 'invoke'; call: number; window: number; frame: FrameFacts; channel: string; args: unknown[] }
  | { type: 'say'; window: number; frame: FrameFacts; channel: string; args: unknown[] }
  | { type: 'fetch'; call: number; url: string }
  | { type: 'navigate'; call: number; window: number; url: string }
  | { type: 'open-window'; call: number; window: number; url: string }
  | { type: 'permission'; call: number; window: number; permission: string }
  | { type: 'facts'; call: number }
  | { type: 'window-closed'; window: number }
  | { type: 'second-instance' };

export interface FrameFacts {
  url: string;
  isMain: boolean;
}

export interface Fetched {
  status: number;
  headers: Record<string, string>;
  body: Uint8Array;
}

/** What the program asked of Electron, for tests to look at. */
export interface ProgramFacts {
  webPreferences: Record<string, unknown>[];
  userData: string;
  menuIsSet: boolean;
  privilegedSchemes: string[];
}
