import type { WorkContext } from '../requests/define.ts';
import { Refusal, type ProblemCode } from '../requests/problem.ts';
import type { MonthBlock } from '../store/observation-columns.ts';
import type { FilesToRead, FromScanThread, ToScanThread } from '../workers/weather-import.ts';
import { nameOf, type Content } from './content.ts';
import { keepThread, takeThread } from './kept-thread.ts';
import type { ReaderOptions } from './reader.ts';
import type { ScanSummary } from './scan.ts';

/** A file to be read, with what a person has said about it. */
export interface ToScan extends Content {
  options: ReaderOptions;
  /** Its share of the progress: bytes of the file itself. */
  sizeBytes: number;
}

/** What came of one file. */
export type Scanned = { summary: ScanSummary } | { refusal: Refusal };

export interface ScanTakers {
  /** Called with each few months of a file, on this thread; while it works, the reading waits. Left out for a look. */
  blocks?: (at: number, blocks: MonthBlock[]) => void;
  /** Called once for each file, in their order, after its last months. */
  finished: (at: number, scanned: Scanned) => void;
}

/**
 * Read weather files one after the other on a thread of their own, with one progress over all of them and cancel. A
 * file that cannot be read is told of and the others go on.
 * @param doing what is done with them, before a file's name: 'Reading'
 * @throws Refusal 'cancelled', or what a taker threw; what was handed over by then is the caller's to undo
 */
export function runScans(
  context: WorkContext,
  doing: string,
  files: readonly ToScan[],
  takers: ScanTakers,
): Promise<void> {
  if (files.length === 0) return Promise.resolve();
  const toRead: FilesToRead = {
    files: files.map(({ path, entry, options }) => ({ path, entry, options })),
    keepBlocks: takers.blocks !== undefined,
    helperUrl: context.workerUrl('weather-stretches').href,
  };
  const beganMs = performance.now();
  const totalBytes = files.reduce((sum, { sizeBytes }) => sum + sizeBytes, 0);
  let bytesBefore = 0;
  let rowsBefore = 0;

  return new Promise((resolve, reject) => {
    if (context.signal.aborted) {
      reject(cancelled(files));
      return;
    }
    const url = context.workerUrl('weather-import');
    const worker = takeThread(url, 'weather import');
    const say = (message: ToScanThread) => {
      worker.postMessage(message);
    };
    // A message that was on its way when the work ended must not begin it anew.
    let isOver = false;
    const letGo = () => {
      isOver = true;
      context.signal.removeEventListener('abort', cancel);
      worker.off('message', hear);
      worker.off('error', broke);
    };
    const stop = (error: Error) => {
      letGo();
      void worker.terminate().then(() => {
        reject(error);
      });
    };
    const cancel = () => {
      stop(cancelled(files));
    };
    context.signal.addEventListener('abort', cancel);

    function tell(at: number, readBytes: number, rowCount: number): void {
      const seconds = (performance.now() - beganMs) / 1000;
      const rows = rowsBefore + rowCount;
      const file = files[at];
      context.progress({
        doing: `${doing} ${file === undefined ? '' : nameOf(file)}${files.length > 1 ? ` (${String(at + 1)} of ${String(files.length)})` : ''}`,
        doneCount: bytesBefore + readBytes,
        totalCount: totalBytes,
        unit: 'bytes',
        detail: `${inThousands(rows)} rows, ${inThousands(Math.round(rows / seconds / 1000) * 1000)} a second`,
      });
    }

    function finished(at: number, scanned: Scanned): void {
      takers.finished(at, scanned);
      bytesBefore += files[at]?.sizeBytes ?? 0;
      if ('summary' in scanned) rowsBefore += scanned.summary.observationCount;
      if (at === files.length - 1) {
        letGo();
        keepThread(url, worker);
        resolve();
      } else if (files.length > 1) tell(at + 1, 0, 0);
    }

    function hear(message: FromScanThread): void {
      if (isOver) return;
      try {
        switch (message.type) {
          case 'blocks':
            takers.blocks?.(message.at, message.blocks);
            say({ type: 'more' });
            break;
          case 'progress':
            tell(message.at, message.readBytes, message.rowCount);
            break;
          case 'done':
            finished(message.at, { summary: message.summary });
            break;
          case 'failed': {
            const fileName = nameOf(files[message.at] ?? { path: '' });
            finished(message.at, {
              refusal: new Refusal(
                codeOf(message.code),
                sentenceOf(fileName, message.code, message.sentence),
              ),
            });
          }
        }
      } catch (error) {
        stop(error instanceof Error ? error : new Error(String(error)));
      }
    }

    function broke(error: Error): void {
      stop(
        new Refusal(
          'file-refused',
          `The reading ended in a way that was not foreseen: ${error.message}. Nothing was kept.`,
        ),
      );
    }

    worker.on('message', hear);
    worker.on('error', broke);
    say({ type: 'read', ...toRead });
  });
}

function cancelled(files: readonly ToScan[]): Refusal {
  const what = files.length === 1 ? nameOf(files[0] ?? { path: '' }) : `${String(files.length)} files`;
  return new Refusal(
    'cancelled',
    `Reading ${what} was cancelled. Nothing of ${files.length === 1 ? 'it' : 'them'} was kept; the library is as it was.`,
  );
}

/** A file that could be read with one more thing said gets a code of its own, so that the window can ask for it. */
function codeOf(code: string): ProblemCode {
  return isNeed(code) ? code : 'file-refused';
}

function isNeed(code: string): code is 'month-needed' | 'zone-needed' | 'mapping-needed' {
  return code === 'month-needed' || code === 'zone-needed' || code === 'mapping-needed';
}

function sentenceOf(fileName: string, code: string, words: string): string {
  if (code === 'ENOENT') return `There is no file ${fileName} at that place any more. Nothing was changed.`;
  if (code === 'EACCES' || code === 'EPERM')
    return `${fileName} may not be read: its permissions forbid it. Nothing was changed.`;
  if (code === 'EISDIR') return `${fileName} is a folder. Choose the files in it. Nothing was changed.`;
  if (code === 'file' || isNeed(code)) return `${fileName} was not read. ${words} Nothing was changed.`;
  return `${fileName} could not be read: ${words}. Nothing was changed.`;
}

function inThousands(count: number): string {
  return String(count).replaceAll(/\B(?=(\d{3})+$)/g, '\u00a0');
}
