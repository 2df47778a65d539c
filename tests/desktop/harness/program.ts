import { spawn, type ChildProcess } from 'node:child_process';
import { programNode, root } from '../../../main/hosts/prepare.mjs';

/** A started part of the program: what it printed, and its end. */
export interface Program {
  child: ChildProcess;
  printed(): string;
  /** Wait until it has printed something. */
  waitFor(pattern: RegExp): Promise<RegExpExecArray>;
  /** Ask it to end, and wait for it. */
  end(): Promise<void>;
  kill(): Promise<void>;
}

const patienceMs = 30_000;

/** Start a program with the project's own Node, in the root folder, with a data folder of its own. */
export function startProgram(args: string[], dataFolder: string): Program {
  const child = spawn(programNode(), args, {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
    // Values cross the channel by structured clone, as they do between Electron's processes.
    serialization: 'advanced',
    env: {
      ...process.env,
      XDG_DATA_HOME: dataFolder,
      APPDATA: dataFolder,
      HOME: dataFolder,
      NODE_OPTIONS: '',
    },
  });
  let text = '';
  const heard = new Set<() => void>();
  for (const stream of [child.stdout, child.stderr])
    stream?.on('data', (part: Buffer) => {
      text += part.toString('utf8');
      for (const look of heard) look();
    });
  const ended = new Promise<void>((resolve) => {
    child.once('exit', () => {
      resolve();
    });
  });
  return {
    child,
    printed: () => text,
    waitFor: (pattern) =>
      new Promise((resolve, reject) => {
        const done = () => {
          heard.delete(look);
          clearTimeout(impatience);
        };
        const look = () => {
          const match = pattern.exec(text);
          if (match === null) return;
          done();
          resolve(match);
        };
        const impatience = setTimeout(() => {
          done();
          reject(new Error(`The program did not print ${String(pattern)}; it printed:\n${text}`));
        }, patienceMs);
        heard.add(look);
        child.once('exit', (code) => {
          done();
          reject(new Error(`The program ended (${String(code)}) after printing:\n${text}`));
        });
        look();
      }),
    async end() {
      child.kill('SIGTERM');
      await ended;
    },
    async kill() {
      child.kill('SIGKILL');
      await ended;
    },
  };
}
