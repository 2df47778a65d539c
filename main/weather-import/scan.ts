import type { MonthBlock } from '../store/observation-columns.ts';
import { isPlainFile, readContent, type Content } from './content.ts';
import { FileProblem } from './file-problem.ts';
import { FileScan, type ScanSummary } from './file-scan.ts';
import type { ReaderOptions } from './reader.ts';
import { scanInStretches, type StretchHelper } from './scan-in-stretches.ts';

export type { ScanSummary } from './file-scan.ts';

export interface ScanOptions extends ReaderOptions {
  /** Called with finished months; awaited, so that a slow taker slows the reading. Left out for a preview. */
  onBlocks?: (blocks: MonthBlock[]) => void | Promise<void>;
  /** Called every megabyte or so. */
  onProgress?: (readBytes: number, rowCount: number) => void;
  /** Who else can read of a long plain file at the same time. Left out, it is read from end to end. */
  helper?: StretchHelper;
}

/**
 * Read a file from end to end in constant memory, whatever its kind, packed or not.
 * @throws FileProblem with a sentence where the file cannot be read as a whole
 */
export async function scanFile(
  content: Content,
  { onBlocks, onProgress, helper, ...options }: ScanOptions = {},
): Promise<ScanSummary> {
  const handOver = async (blocks: MonthBlock[]) => {
    if (onBlocks !== undefined && blocks.length > 0) await onBlocks(blocks);
  };
  if (helper !== undefined && (await isPlainFile(content, helper.leastBytes)))
    return scanInStretches(content.path, options, helper, handOver, onProgress);
  let scan: FileScan | null = null;
  const { sizeBytes } = await readContent(content, async (piece, readBytes) => {
    scan ??= await FileScan.open(piece, options);
    scan.feed(piece);
    await handOver(scan.blocks());
    onProgress?.(readBytes, scan.rowCount);
    return true;
  });
  // Assigned inside the loop above, which the checker does not follow.
  const finished = scan as FileScan | null;
  if (finished === null) throw new FileProblem('The file is empty.');
  await handOver(finished.end());
  return finished.summary(sizeBytes);
}
