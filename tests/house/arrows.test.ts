import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { importsOf, rootFolder, sourcesIn } from './imports.ts';
import { anyUses, arrowFaults, impurities } from './rules.ts';

const program = ['shared-calc', 'main', 'renderer'].flatMap(sourcesIn);

describe('The house', () => {
  test('has every arrow the right way', () => {
    expect(program.length).toBeGreaterThan(40);
    expect(program.flatMap(arrowFaults)).toEqual([]);
  });

  test('keeps shared-calc free of clock, disk, page, network, chance and state', () => {
    const calc = sourcesIn('shared-calc');
    expect(calc.length).toBeGreaterThan(10);
    expect(calc.flatMap(impurities)).toEqual([]);
  });

  test('has no any, least of all at the bridge', () => {
    for (const path of ['renderer/app/bridge.ts', 'main/hosts/preload.ts', 'main/requests/define.ts'])
      expect(
        program.map((source) => source.path),
        path,
      ).toContain(path);
    expect(program.filter(({ path }) => !path.endsWith('.mjs')).flatMap(anyUses)).toEqual([]);
  });

  test('has a README of at most five lines of prose in each of its folders', () => {
    const folders = ['shared-calc', 'main', 'renderer', 'tests', 'fixtures'].flatMap((top) => [
      top,
      ...(existsSync(join(rootFolder, top))
        ? readdirSync(join(rootFolder, top), { withFileTypes: true })
            .filter((entry) => entry.isDirectory() && top !== 'tests')
            .map((entry) => `${top}/${entry.name}`)
        : []),
    ]);
    const faults = folders.flatMap((folder) => {
      if (!existsSync(join(rootFolder, folder))) return [];
      const path = join(rootFolder, folder, 'README.md');
      if (!existsSync(path)) return [`${folder} has no README.md`];
      // A table of contents may be as long as what it lists.
      const lines = readFileSync(path, 'utf8')
        .split('\n')
        .filter((line) => line.trim() !== '' && !/^[|#]/.test(line)).length;
      return lines > 5 ? [`${folder}/README.md has ${String(lines)} lines; at most 5`] : [];
    });
    expect(faults).toEqual([]);
  });
});

// A rule that catches nothing would keep nothing: each is shown a source that breaks it.
describe('The rules of the house', () => {
  const at = (path: string, text: string) => ({ path, text });

  test.each([
    ['shared-calc/a.ts', `import { x } from '../main/requests/table.ts';`, 'nothing of ours'],
    ['shared-calc/a.ts', `import type { X } from '../main/requests/table.ts';`, 'nothing of ours'],
    ['shared-calc/a.ts', `export { x } from '../renderer/app/client.ts';`, 'nothing of ours'],
    ['shared-calc/a.ts', `const x = await import('../main/requests/table.ts');`, 'nothing of ours'],
    ['shared-calc/a.ts', `import { readFileSync } from 'node:fs';`, 'pure packages'],
    ['shared-calc/a.ts', `import Database from 'better-sqlite3';`, 'pure packages'],
    ['main/a.ts', `import { x } from '../renderer/app/client.ts';`, 'never imports the window'],
    ['main/a.ts', `import type { Bridge } from '../renderer/app/bridge.ts';`, 'never imports the window'],
    ['renderer/a.ts', `import { requestTable } from '../main/requests/table.ts';`, 'by types alone'],
    ['renderer/a.ts', `import { type A, b } from '../main/requests/table.ts';`, 'by types alone'],
    ['renderer/a.ts', `import '../main/requests/table.ts';`, 'by types alone'],
    ['renderer/a.ts', `export * from '../main/requests/table.ts';`, 'by types alone'],
    ['renderer/a.ts', `const t = import('../main/requests/table.ts');`, 'by types alone'],
    [
      'renderer/a.svelte',
      `<script lang="ts">import { x } from '../main/x.ts';</script><p>hi</p>`,
      'by types alone',
    ],
    ['renderer/a.ts', `import { join } from 'node:path';`, 'has no Node'],
    ['renderer/a.ts', `import { ipcRenderer } from 'electron';`, 'has no Node'],
    ['renderer/a.ts', `import { z } from 'zod';`, 'has no Node'],
    ['main/a.ts', `import { x } from '../tests/browser.ts';`, 'no tests'],
    ['main/a.ts', `import { x } from './b';`, 'with its ending'],
  ])('catch in %s: %s', (path, text, why) => {
    expect(arrowFaults(at(path, text)).join()).toContain(why);
  });

  test.each([
    ['renderer/a.ts', `import type { Answer } from '../main/requests/run.ts';`],
    ['renderer/a.ts', `import { type A, type B } from '../main/requests/run.ts';`],
    ['renderer/a.ts', `type A = import('../main/requests/run.ts').Answer;`],
    ['renderer/a.ts', `import { isaDensity } from '../shared-calc/atmosphere/isa.ts';`],
    ['main/a.ts', `import { isaDensity } from '../shared-calc/atmosphere/isa.ts';`],
    ['shared-calc/a/b.ts', `import { requireRange } from '../problem.ts';`],
  ])('let pass in %s: %s', (path, text) => {
    expect(arrowFaults(at(path, text))).toEqual([]);
  });

  test.each([
    'const now = Date.now();',
    'const now = new Date();',
    'const now = new Date;',
    'const now = Date();',
    'const x = Math.random();',
    "const x = Math['random']();",
    'const now = Temporal.Now.instant();',
    'const t = performance.now();',
    'const w = window.innerWidth;',
    "document.title = 'x';",
    'const id = crypto.randomUUID();',
    "await fetch('x');",
    'const home = process.env;',
    "console.log('x');",
    'setTimeout(() => 1, 1);',
    'let calls = 0;',
    'const g = globalThis.Date;',
  ])('find impure: %s', (text) => {
    expect(impurities(at('shared-calc/a.ts', text))).toHaveLength(1);
  });

  test.each([
    'const epochS = new Date(0).getTime();',
    'const { window } = options;',
    'interface A { process: number; fetch(): void }',
    'export const limits = { window: 3 };',
    'const days = around.window;',
    'function f(window: number) {}',
    'export const G0_MS2 = 9.80665;',
  ])('find pure: %s', (text) => {
    expect(impurities(at('shared-calc/a.ts', text))).toEqual([]);
  });

  test('find any', () => {
    expect(anyUses(at('main/a.ts', 'function f(x: any) {}'))).toHaveLength(1);
    expect(anyUses(at('main/a.ts', 'const any = 1; type A = unknown;'))).toEqual([]);
  });

  test('read every import of a real file', () => {
    const table = sourcesIn('main/requests').find(({ path }) => path.endsWith('/table.ts'));
    expect(table && importsOf(table).map(({ target }) => target)).toContain('main/requests/history.ts');
  });
});
