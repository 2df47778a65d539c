import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { z } from 'zod';
import type { AnyRequest, WorkContext } from '../requests/define.ts';
import { Refusal, type Problem } from '../requests/problem.ts';
import { problemOf, runRequest, type Answer } from '../requests/run.ts';
import { findRequest, requestTable } from '../requests/table.ts';
import { holdLibrary, type HolderNote } from '../store/lock.ts';
import { openForReading, openLibrary } from '../store/open.ts';
import { workerUrl } from '../workers/worker-url.ts';
import { askDoor, readDoor } from './door-file.ts';
import { inUse } from './in-use.ts';
import { usualLibraryPath } from './library-place.ts';

// One request of the table from a script: `npm run -s ask -- --library FILE NAME '{json}'`.
// Prints the answer's output as JSON on stdout and nothing else; a refusal as JSON too, with exit code 1.

const usage =
  "Usage: npm run -s ask -- [--library FILE] NAME ['{json}'], or --list for every request with its schemas.";

// Whoever reads the answer may stop reading early (head).
process.stdout.on('error', () => process.exit());
try {
  await main();
} catch (error) {
  finish({ ok: false, problem: problemOf('ask', error) });
}

async function main(): Promise<void> {
  const { values, positionals } = readArguments();
  const [name, json = '{}'] = positionals;
  if (values.list) {
    print(list());
    return;
  }
  if (name === undefined || positionals.length > 2) throw new Refusal('input-refused', usage);
  const input = parseInput(name, json);
  const path = resolve(process.env['INIT_CWD'] ?? '.', values.library ?? usualLibraryPath());
  const request = findRequest(name);
  if (request === undefined)
    throw new Refusal('unknown-request', `There is no request '${name}'. --list names them all.`);
  finish(
    request.kind === 'read'
      ? await readOnly(path, name, request, input)
      : await changing(path, name, request, input),
  );
}

function readArguments() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: { library: { type: 'string' }, list: { type: 'boolean', default: false } },
    });
  } catch (error) {
    throw new Refusal('input-refused', `${error instanceof Error ? error.message : String(error)} ${usage}`);
  }
}

function parseInput(name: string, json: string): unknown {
  try {
    return JSON.parse(json);
  } catch (error) {
    const words = error instanceof Error ? error.message : String(error);
    throw new Refusal('input-refused', `The input of ${name} is not JSON: ${words}. Nothing was changed.`);
  }
}

/** Looking never waits for whoever holds the library. */
async function readOnly(path: string, name: string, request: AnyRequest, input: unknown): Promise<Answer> {
  if (!existsSync(path)) throw new Refusal('not-found', `There is no library ${path}.`);
  const db = openForReading(path);
  try {
    return await runRequest(name, request, contextOn(db, path), input);
  } finally {
    db.close();
  }
}

/** A change is made here while nobody holds the library; else by the process that holds it, or not at all. */
async function changing(path: string, name: string, request: AnyRequest, input: unknown): Promise<Answer> {
  // The usual place is made when it is first used; the folder of a named file is the person's to make.
  if (path === usualLibraryPath()) mkdirSync(dirname(path), { recursive: true });
  const note: HolderNote = {
    pid: process.pid,
    host: 'script',
    address: null,
    sinceEpochS: Date.now() / 1000,
  };
  const hold = holdLibrary(path, note);
  if (!hold.held) return throughHolder(path, hold.by.note, name, input);
  try {
    const db = await openLibrary(path);
    try {
      return await runRequest(name, request, contextOn(db, path), input);
    } finally {
      db.close();
    }
  } finally {
    hold.release();
  }
}

async function throughHolder(
  path: string,
  note: HolderNote | null,
  name: string,
  input: unknown,
): Promise<Answer> {
  const door = note?.host === 'loopback' ? readDoor(path) : null;
  const answer = door === null ? null : await askDoor(door, '/request', { name, input, call: randomUUID() });
  if (isAnswer(answer)) return answer;
  throw inUse(path, note);
}

function isAnswer(value: unknown): value is Answer {
  return typeof value === 'object' && value !== null && 'ok' in value && typeof value.ok === 'boolean';
}

function contextOn(db: WorkContext['db'], libraryPath: string): WorkContext {
  const controller = new AbortController();
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.once(signal, () => {
      controller.abort();
    });
  return {
    db,
    libraryPath,
    nowEpochS: () => Date.now() / 1000,
    newId: () => randomUUID(),
    signal: controller.signal,
    progress: () => undefined,
    changed: () => undefined,
    workerUrl,
  };
}

/** Every request with its schemas, as JSON Schema. */
function list(): unknown {
  return Object.entries<AnyRequest>(requestTable).map(([name, { kind, about, input, output }]) => ({
    name,
    kind,
    about,
    input: z.toJSONSchema(input, { io: 'input', unrepresentable: 'any' }),
    output: z.toJSONSchema(output, { io: 'output', unrepresentable: 'any' }),
  }));
}

function finish(answer: Answer): void {
  if (answer.ok) {
    print(answer.output);
    return;
  }
  print({ problem: answer.problem satisfies Problem });
  process.exitCode = 1;
}

function print(value: unknown): void {
  process.stdout.write(`${JSON.stringify(value, null, 2)}\n`);
}
