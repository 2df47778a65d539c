import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export interface Killed {
  /** Lines that it wrote before it died. */
  said: string[];
}

/**
 * Run a script of this folder in a process of its own until it is dead by SIGKILL: by its own hand, or by ours a
 * number of milliseconds after it began to say something.
 */
export async function runUntilKilled(
  script: string,
  args: readonly string[],
  killAfterMs: number | null,
): Promise<Killed> {
  const file = fileURLToPath(new URL(script, import.meta.url));
  const child = spawn(process.execPath, [file, ...args], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  let complaints = '';
  let timer: NodeJS.Timeout | undefined;
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    said += text;
    if (killAfterMs !== null) timer ??= setTimeout(() => child.kill('SIGKILL'), killAfterMs);
  });
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    complaints += text;
  });
  const signal = await new Promise<string | null>((resolve) => {
    child.once('close', (_code, by) => {
      resolve(by);
    });
  });
  clearTimeout(timer);
  if (signal !== 'SIGKILL')
    throw new Error(`It was to be killed, but ended by itself: ${complaints || said}`);
  return { said: said.split('\n').slice(0, -1) };
}
