import { basename } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { WorkContext } from '../requests/define.ts';
import { Refusal, type ProblemCode } from '../requests/problem.ts';
import type { MonthBlock } from '../store/observation-columns.ts';
import type { FromScanThread, ScanThreadData } from '../workers/weather-import.ts';
import type { ReaderOptions } from './reader.ts';
import type { ScanSummary } from './scan.ts';

/**
 * Read a weather file on a thread of its own, with progress and cancel.
 * @param options of the reader: what a person has said about the file
 * @param take called with each few months, on this thread; while it works, the reading waits
 * @throws Refusal 'cancelled', or 'file-refused' with the reason; what was handed over by then is the caller's to undo
 */
export function runScan(
  context: WorkContext,
  path: string,
  options: ReaderOptions,
  take: ((blocks: MonthBlock[]) => void) | null,
): Promise<ScanSummary> {
  const fileName = basename(path);
  const data: ScanThreadData = { path, options, keepBlocks: take !== null };
  const worker = new Worker(context.workerUrl('weather-import'), {
    workerData: data,
    name: 'weather import',
  });
  const beganMs = performance.now();

  return new Promise((resolve, reject) => {
    // A message that was on its way when the work ended must not begin it anew.
    let isOver = false;
    const end = (settle: () => void) => {
      isOver = true;
      context.signal.removeEventListener('abort', cancel);
      void worker.terminate().then(settle);
    };
    const cancel = () => {
      end(() => {
        reject(
          new Refusal(
            'cancelled',
            `Reading ${fileName} was cancelled. Nothing of it was kept; the library is as it was.`,
          ),
        );
      });
    };
    if (context.signal.aborted) {
      cancel();
      return;
    }
    context.signal.addEventListener('abort', cancel);
    worker.on('message', (message: FromScanThread) => {
      if (isOver) return;
      if (message.type === 'blocks') {
        try {
          take?.(message.blocks);
          worker.postMessage('more');
        } catch (error) {
          end(() => {
            reject(error instanceof Error ? error : new Error(String(error)));
          });
        }
      } else if (message.type === 'progress') {
        const seconds = (performance.now() - beganMs) / 1000;
        context.progress({
          doing: `Reading ${fileName}`,
          doneCount: message.readBytes,
          totalCount: message.sizeBytes,
          unit: 'bytes',
          detail: `${inThousands(message.rowCount)} rows, ${inThousands(Math.round(message.rowCount / seconds / 1000) * 1000)} a second`,
        });
      } else if (message.type === 'done')
        end(() => {
          resolve(message.summary);
        });
      else
        end(() => {
          reject(new Refusal(codeOf(message.code), sentenceOf(fileName, message.code, message.sentence)));
        });
    });
    worker.on('error', (error) => {
      end(() => {
        reject(
          new Refusal(
            'file-refused',
            `${fileName} could not be read: ${error.message}. Nothing of it was kept.`,
          ),
        );
      });
    });
  });
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
