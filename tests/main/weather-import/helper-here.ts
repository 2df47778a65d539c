import { closeSync, openSync } from 'node:fs';
import { kindOf } from '../../../main/weather-import/kinds.ts';
import type { SharedFile, StretchHelper } from '../../../main/weather-import/scan-in-stretches.ts';
import { readStretch } from '../../../main/weather-import/stretch.ts';

/** A helper without a thread: every file is cut into stretches of so many bytes, however short it is. */
export function helperHere(stretchBytes: number): StretchHelper & { readCount: number } {
  let shared: SharedFile | null = null;
  const helper = {
    leastBytes: 0,
    stretchBytes,
    readCount: 0,
    begin: (file: SharedFile) => {
      // As it arrives on another thread.
      shared = structuredClone(file);
    },
    read: (stretch: { startByte: number; endByte: number }) => {
      if (shared === null) throw new Error('no file was begun');
      const { path, head, options, carried } = shared;
      const kind = kindOf(head);
      if (kind === null) throw new Error('the head is of no kind');
      helper.readCount++;
      const file = openSync(path, 'r');
      try {
        return Promise.resolve(structuredClone(readStretch({ file, kind, head, options }, stretch, carried)));
      } finally {
        closeSync(file);
      }
    },
  };
  return helper;
}
