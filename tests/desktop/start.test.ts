import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { root } from '../../main/hosts/prepare.mjs';
import { startProgram } from './harness/program.ts';
import { withFolder } from './harness/with-window.ts';

// What `npm start` runs, without npm in between.

const launcher = join(root, 'main/hosts/start.mjs');
const start = (folder: string, ...flags: string[]) =>
  startProgram(
    [launcher, '--no-open', '--library', join(folder, 'library.tarewing'), ...flags],
    join(folder, 'data'),
  );

async function answers(origin: string): Promise<boolean> {
  return fetch(origin).then(
    () => true,
    () => false,
  );
}

test('npm start prints an address that works, and ends everything on Ctrl-C', async () => {
  await withFolder(async (folder) => {
    const program = start(folder);
    const [, origin = ''] = await program.waitFor(/(http:\/\/127\.0\.0\.1:\d+)\/#\S+/);
    await program.waitFor(/Library: .*library\.tarewing/);
    expect(await answers(origin)).toBe(true);
    const ended = new Promise<number | null>((resolve) => program.child.once('exit', resolve));
    program.child.kill('SIGINT');
    expect(await ended).toBe(0);
    expect(await answers(origin)).toBe(false);
    expect(existsSync(join(folder, 'library.tarewing.lock.json'))).toBe(false);
  });
});

test('a launcher that is killed leaves no program behind', async () => {
  await withFolder(async (folder) => {
    const program = start(folder);
    const [, origin = ''] = await program.waitFor(/(http:\/\/127\.0\.0\.1:\d+)\/#\S+/);
    await program.waitFor(/Library: /);
    await program.kill();
    await expect.poll(() => answers(origin), { timeout: 10_000 }).toBe(false);
    await expect.poll(() => existsSync(join(folder, 'library.tarewing.lock.json'))).toBe(false);
  });
});

test('an npm that is killed outright, before it can pass anything on, leaves no program behind', async () => {
  await withFolder(async (folder) => {
    const line = [process.execPath, launcher, '--no-open', '--library', join(folder, 'library.tarewing')];
    // In npm's place: a parent that starts the launcher as npm does, with npm's name for what it runs.
    const inNpmsPlace = `
      const { spawn } = require('node:child_process');
      spawn(${JSON.stringify(line[0])}, ${JSON.stringify(line.slice(1))}, {
        stdio: 'inherit', env: { ...process.env, npm_lifecycle_event: 'start' } });`;
    const npm = startProgram(['-e', inNpmsPlace], join(folder, 'data'));
    const [, origin = ''] = await npm.waitFor(/(http:\/\/127\.0\.0\.1:\d+)\/#\S+/);
    await npm.waitFor(/Library: /);
    await npm.kill();
    await expect.poll(() => answers(origin), { timeout: 15_000 }).toBe(false);
    await expect.poll(() => existsSync(join(folder, 'library.tarewing.lock.json'))).toBe(false);
  });
});

test('a second start on the same library says where it is open and opens nothing', async () => {
  await withFolder(async (folder) => {
    const first = start(folder);
    const [, origin = ''] = await first.waitFor(/(http:\/\/127\.0\.0\.1:\d+)\/#\S+/);
    await first.waitFor(/Library: /);
    const second = start(folder);
    const [, again = ''] = await second.waitFor(/is open already\..*(http:\/\/127\.0\.0\.1:\d+)\/#\S+/);
    expect(again).toBe(origin);
    await new Promise((resolve) => second.child.once('exit', resolve));
    expect(second.child.exitCode).toBe(0);
    expect(await answers(origin)).toBe(true);
    await first.end();
  });
});

test('npm start explains its flags, and refuses others', async () => {
  const run = (...flags: string[]) =>
    new Promise<{ code: number | null; text: string }>((resolve) => {
      const child = spawn(process.execPath, [launcher, ...flags], { stdio: ['ignore', 'pipe', 'pipe'] });
      let text = '';
      for (const stream of [child.stdout, child.stderr])
        stream.on('data', (part: Buffer) => (text += part.toString('utf8')));
      child.once('close', (code) => {
        resolve({ code, text });
      });
    });
  const help = await run('--help');
  expect(help.code).toBe(0);
  for (const flag of ['--library FILE', '--demo', '--no-open', '--browser', '--help'])
    expect(help.text).toContain(flag);
  const refused = await run('--libary', 'x');
  expect(refused.code).toBe(2);
  expect(refused.text).toMatch(/libary/);
});
