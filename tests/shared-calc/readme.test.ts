import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const folder = new URL('../../shared-calc/', import.meta.url);
const modules = import.meta.glob<Record<string, unknown>>('../../shared-calc/*/**/*.ts', { eager: true });
const rows = readFileSync(new URL('README.md', folder), 'utf8')
  .split('\n')
  .map((line) => /^\| `(\w+)` *\| (.*?) *\| (.*?) *\|$/.exec(line))
  .filter((row) => row !== null)
  .map(([, room = '', functions = '', sources = '']) => ({ room, functions, sources }));

test('the README of shared-calc lists every room once', () => {
  const rooms = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name);
  expect(rows.map(({ room }) => room).sort()).toEqual(rooms.sort());
});

test.each(rows)('every function that the README lists for $room is exported there', ({ room, functions }) => {
  const exported = Object.entries(modules)
    .filter(([path]) => path.startsWith(`../../shared-calc/${room}/`))
    .flatMap(([, module]) => Object.keys(module));
  const listed = [...functions.matchAll(/`(\w+)`/g)].map(([, name]) => name);
  expect(listed.length).toBeGreaterThan(0);
  expect(listed.filter((name) => !exported.includes(name ?? ''))).toEqual([]);
});
