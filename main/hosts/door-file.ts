import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { dataFolder } from './library-place.ts';

/** How a script or a second start of the same person reaches the loopback host that holds a library. */
export interface Door {
  origin: string;
  token: string;
}

/**
 * Leave the key for one library where only its owner can read it: in the folder for the program's data, not beside
 * the library, which may lie on a disk or in a synced folder that keeps no permissions.
 */
export function writeDoor(libraryPath: string, door: Door): void {
  const path = doorPath(libraryPath);
  mkdirSync(join(path, '..'), { recursive: true, mode: 0o700 });
  rmSync(path, { force: true });
  writeFileSync(path, JSON.stringify(door), { mode: 0o600, flag: 'wx' });
}

export function readDoor(libraryPath: string): Door | null {
  try {
    const door: unknown = JSON.parse(readFileSync(doorPath(libraryPath), 'utf8'));
    return isDoor(door) ? door : null;
  } catch {
    return null;
  }
}

/** Take the key away, unless another process has put its own there since. */
export function removeDoor(libraryPath: string, token: string): void {
  if (readDoor(libraryPath)?.token === token) rmSync(doorPath(libraryPath), { force: true });
}

function doorPath(libraryPath: string): string {
  const name = createHash('sha256').update(realpathSync(libraryPath)).digest('hex').slice(0, 32);
  return join(dataFolder(), 'doors', `${name}.json`);
}

function isDoor(value: unknown): value is Door {
  return (
    typeof value === 'object' &&
    value !== null &&
    'origin' in value &&
    typeof value.origin === 'string' &&
    'token' in value &&
    typeof value.token === 'string'
  );
}

/**
 * Ask the loopback host behind a door.
 * @returns its answer, or null where nobody answers there any more
 */
export async function askDoor(door: Door, path: '/request' | '/code', body: unknown): Promise<unknown> {
  try {
    const response = await fetch(door.origin + path, {
      method: 'POST',
      headers: { 'X-Tarewing-Token': door.token, 'Content-Type': 'application/json' },
      body: JSON.stringify(body),
    });
    return await response.json();
  } catch {
    return null;
  }
}
