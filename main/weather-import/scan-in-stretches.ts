import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import type { MonthBlock } from '../store/observation-columns.ts';
import { FileScan, type ScanSummary } from './file-scan.ts';
import type { Carried, ReaderOptions } from './reader.ts';
import { readStretch, type Findings, type Stretch } from './stretch.ts';

/** A file of which stretches are to be read elsewhere. Plain data: it goes from thread to thread. */
export interface SharedFile {
  path: string;
  head: Uint8Array;
  options: ReaderOptions;
  carried: Carried;
}

/** Somebody who reads stretches of a file at the same time. */
export interface StretchHelper {
  /** Only files as long as this are shared. */
  readonly leastBytes: number;
  readonly stretchBytes: number;
  /** The file that the next stretches are of. */
  begin(file: SharedFile): void;
  /** What a stretch has come to; null where that could not be told. Never rejects. */
  read(stretch: Stretch): Promise<Findings | null>;
}

/** So many stretches the helper is given ahead: it must not wait while this thread is busy with one of its own. */
const givenAhead = 3;
/** No stretch is begun that lies further behind the last one that was taken: findings wait in memory. */
const mostWaiting = 12;
const headBytes = 1 << 20;

/**
 * Read a long plain file together with a helper. Each stretch is read by itself and taken over in the file's order;
 * one whose findings do not tell all that reading it in its turn would have told is read again, in its turn.
 */
export async function scanInStretches(
  path: string,
  options: ReaderOptions,
  helper: StretchHelper,
  handOver: (blocks: MonthBlock[]) => Promise<void>,
  onProgress: ((readBytes: number, rowCount: number) => void) | undefined,
): Promise<ScanSummary> {
  const file = openSync(path, 'r');
  try {
    const sizeBytes = fstatSync(file).size;
    const head = Buffer.allocUnsafe(Math.min(sizeBytes, headBytes));
    const scan = await FileScan.open(head.subarray(0, readSync(file, head, 0, head.length, 0)), options);
    const took = async (endByte: number) => {
      await handOver(scan.blocks());
      onProgress?.(endByte, scan.rowCount);
    };
    let startByte = 0;
    let carried: Carried | null = null;
    while (startByte < sizeBytes && carried === null) {
      const stretch = stretchFrom(startByte);
      scan.readStretch(file, stretch);
      carried = scan.carried();
      startByte = stretch.endByte;
      await took(startByte);
    }
    if (carried !== null) await share(carried);
    await handOver(scan.end());
    return scan.summary(sizeBytes);

    function stretchFrom(startByte: number): Stretch {
      return { startByte, endByte: Math.min(startByte + helper.stretchBytes, sizeBytes) };
    }

    async function share(carried: Carried): Promise<void> {
      helper.begin({ path, head: scan.head, options, carried });
      const source = { file, kind: scan.kind, head: scan.head, options };
      const coming: { stretch: Stretch; findings: Promise<Findings | null>; isThere: boolean }[] = [];
      let given = 0;
      const add = (stretch: Stretch, findings: Promise<Findings | null>, isThere: boolean) => {
        const each = { stretch, findings, isThere };
        coming.push(each);
        startByte = stretch.endByte;
        return each;
      };
      while (startByte < sizeBytes || coming.length > 0) {
        for (; given < givenAhead && startByte < sizeBytes && coming.length < mostWaiting; given++) {
          const stretch = stretchFrom(startByte);
          const each = add(stretch, helper.read(stretch), false);
          void each.findings.then(() => {
            each.isThere = true;
            given--;
          });
        }
        if (coming[0]?.isThere !== true && startByte < sizeBytes && coming.length < mostWaiting) {
          const stretch = stretchFrom(startByte);
          add(stretch, Promise.resolve(readStretch(source, stretch, carried)), true);
          // What the helper has said meanwhile is heard.
          await new Promise((resolve) => setImmediate(resolve));
          continue;
        }
        const next = coming.shift();
        if (next === undefined) continue;
        const findings = await next.findings;
        if (findings === null || !scan.take(findings)) scan.readStretch(file, next.stretch);
        await took(next.stretch.endByte);
      }
    }
  } finally {
    closeSync(file);
  }
}
