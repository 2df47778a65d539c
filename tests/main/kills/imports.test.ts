import type Database from 'better-sqlite3';
import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { openForReading } from '../../../main/store/open.ts';
import { fileLibrary } from '../file-library.ts';
import { seededDraw } from '../requests/undo/draw.ts';
import { temporaryFolder } from '../store/temporary-folder.ts';
import { runUntilKilled } from './killed.ts';

const folder = temporaryFolder();

/** Four years of hourly rows in the archive's layout: 48 months, so that an import has several commits. */
function fourYears(path: string): number {
  const rows: string[] = [];
  for (let epochS = Date.UTC(2020, 0, 1) / 1000; epochS < Date.UTC(2024, 0, 1) / 1000; epochS += 3600) {
    const valid = new Date(epochS * 1000).toISOString().slice(0, 16).replace('T', ' ');
    rows.push(`STRP,${valid},${String(40 + (rows.length % 50))}.0,35.0,30.02`);
  }
  writeFileSync(path, `station,valid,tmpf,dwpf,alti\n${rows.join('\n')}\n`);
  return rows.length;
}

interface Left {
  unfinishedCount: number;
  notices: number;
}

/** Look at what a killed process left, open it as the next start does, and find an import whole or not at all. */
async function soundLibrary(path: string, rowsCount: number): Promise<Left> {
  // Before the sweep: a reader sees nothing of a half import.
  const reader = openForReading(path);
  const finished = countOf(reader, 'weather_import WHERE finished_epoch_s IS NOT NULL');
  const unfinishedCount = countOf(reader, 'weather_import WHERE finished_epoch_s IS NULL');
  expect(countOf(reader, 'observation')).toBe(finished * rowsCount);
  reader.close();

  const library = await fileLibrary(path);
  expect(library.db.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(library.db.pragma('foreign_key_check')).toEqual([]);
  const imports = (await library.ask('weather.imports', {})) as { observationCount: number }[];
  expect(imports.map((each) => each.observationCount)).toEqual(
    Array.from({ length: finished }, () => rowsCount),
  );
  expect(countOf(library.db, 'observation')).toBe(finished * rowsCount);
  expect(countOf(library.db, 'weather_import')).toBe(finished);
  expect(countOf(library.db, 'weather_station')).toBe(finished);
  if (finished === 0) expect(countOf(library.db, 'observation_block')).toBe(0);
  // A person is told of what was swept, each time.
  const notices = countOf(library.db, 'notice');
  library.close();
  return { unfinishedCount, notices };
}

function countOf(db: Database.Database, from: string): number {
  return db.prepare<[], { count: number }>(`SELECT count(*) AS count FROM ${from}`).get()?.count ?? -1;
}

test('kill -9 around every commit of an import and at random instants, 20 times: it is there whole or not at all, and what was left is swept', async () => {
  const path = folder.join('mine.tarewing');
  const file = folder.join('strip.csv');
  const rowsCount = fourYears(file);
  const draw = seededDraw(20_261_125);
  const left: Left[] = [];
  const kill = async (args: string[], killAfterMs: number | null) => {
    await runUntilKilled('importer.ts', [path, file, ...args], killAfterMs);
    left.push(await soundLibrary(path, rowsCount));
  };
  // Commit 1 begins the import, 2 to 7 put eight months away each, the next ones take it back and begin again.
  (await fileLibrary(path)).close();
  for (let commit = 1; commit <= 7; commit++) {
    await kill(['before', String(commit)], null);
    await kill(['after', String(commit)], null);
  }
  expect(left.filter(({ unfinishedCount }) => unfinishedCount > 0).length).toBeGreaterThanOrEqual(12);
  for (let run = 0; run < 6; run++) await kill([], 1 + draw.below(400));
  expect(left).toHaveLength(20);
  expect(left.at(-1)?.notices).toBe(left.filter(({ unfinishedCount }) => unfinishedCount > 0).length);
}, 300_000);
