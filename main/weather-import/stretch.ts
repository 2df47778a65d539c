import { readSync } from 'node:fs';
import { withoutMark } from './content.ts';
import { FileProblem } from './file-problem.ts';
import { LinePass } from './line-pass.ts';
import type { NoticedProblem } from './problems.ts';
import type { Carried, Kind, ReaderOptions, Seen } from './reader.ts';
import { packedRows, type RowColumns } from './report-rows.ts';

// A plain file can be cut anywhere: a line belongs to the stretch in which it begins, so that stretches that join
// hold every line once, wherever the seams fall.

/** Bytes of a file: those from `startByte` to before `endByte`. */
export interface Stretch {
  startByte: number;
  endByte: number;
}

/** What the lines of a stretch come to, with line numbers that begin in it. */
export interface Findings {
  lineCount: number;
  rows: RowColumns & { memory: ArrayBuffer };
  problems: NoticedProblem[];
  seen: Seen;
}

/** Where lines are read from, and how. */
export interface StretchSource {
  /** A descriptor of the open file. */
  file: number;
  kind: Kind;
  head: Uint8Array;
  options: ReaderOptions;
}

const lineFeed = 10;
/** Read into again and again: a piece is done with before the next one is read. */
const buffer = Buffer.allocUnsafeSlow(1 << 18);

/**
 * Read a stretch by itself, from the middle of a file.
 * @param carried what its lines have to know of those before them
 * @returns null where it has to be read in its turn, after the lines before it, to tell what is wrong with it
 */
export function readStretch(
  { file, kind, head, options }: StretchSource,
  stretch: Stretch,
  carried: Carried,
): Findings | null {
  try {
    const pass = new LinePass(kind, head, { ...options, carried });
    feedStretch(file, stretch, pass);
    const seen = pass.reader.stretches?.seen();
    if (seen === undefined) return null;
    return {
      lineCount: pass.lineCount,
      rows: packedRows(pass.rows),
      problems: pass.problems.all(),
      seen,
    };
  } catch (error) {
    if (error instanceof FileProblem) return null;
    throw error;
  }
}

/** Give a pass all lines that begin in the stretch, the last of them whole. */
export function feedStretch(file: number, { startByte, endByte }: Stretch, pass: LinePass): void {
  // Begun a byte earlier: if that ends a line, the first line begins right at the start.
  let at = Math.max(0, startByte - 1);
  let begun = startByte === 0;
  for (;;) {
    const length = readSync(file, buffer, 0, buffer.length, at);
    if (length === 0) {
      pass.end();
      return;
    }
    const piece = buffer.subarray(0, length);
    let from = at === 0 && begun ? length - withoutMark(piece).length : 0;
    if (!begun) {
      from = piece.indexOf(lineFeed) + 1;
      begun = from > 0;
      if (at + (begun ? from : length) >= endByte) return;
    }
    if (begun) {
      // The last line ends at the first line end from the stretch's last byte on.
      const last = at + length < endByte ? -1 : piece.indexOf(lineFeed, Math.max(from, endByte - 1 - at));
      pass.feed(piece.subarray(from, last < 0 ? length : last + 1));
      if (last >= 0) return;
    }
    at += length;
  }
}
