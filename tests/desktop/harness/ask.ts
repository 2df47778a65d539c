import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { programNode, root } from '../../../main/hosts/prepare.mjs';

export interface Asked {
  code: number;
  stdout: string;
  stderr: string;
  /** What stdout holds, which has to be JSON and nothing else. */
  json: unknown;
}

/** Ask as a script does: `npm run -s ask -- args`, without npm in between. */
export function ask(dataFolder: string, ...args: string[]): Promise<Asked> {
  const child = spawn(programNode(), [join(root, 'main/hosts/ask.mjs'), ...args], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, XDG_DATA_HOME: dataFolder, APPDATA: dataFolder, HOME: dataFolder, INIT_CWD: root },
  });
  let [stdout, stderr] = ['', ''];
  child.stdout.on('data', (part: Buffer) => (stdout += part.toString('utf8')));
  child.stderr.on('data', (part: Buffer) => (stderr += part.toString('utf8')));
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (code) => {
      try {
        resolve({ code: code ?? -1, stdout, stderr, json: JSON.parse(stdout) });
      } catch {
        reject(new Error(`stdout is not JSON alone:\n${stdout}\nstderr:\n${stderr}`));
      }
    });
  });
}
