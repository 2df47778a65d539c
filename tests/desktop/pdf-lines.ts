import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

type Matrix = [number, number, number, number, number, number];

export interface PdfPage {
  /** Lengths of all straight level strokes, in millimetres of paper. */
  levelLinesMm: number[];
  /** The same of upright ones. */
  uprightLinesMm: number[];
  text: string;
  /** Each piece of text with the place of its middle, in millimetres from the left edge of the paper. */
  pieces: { text: string; middleMm: number }[];
}

const POINTS_PER_MM = 72 / 25.4;

/** What is drawn on the first page of a PDF, with its real lengths. */
export async function readPdfPage(bytes: Uint8Array): Promise<PdfPage> {
  const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const page = await pdf.getPage(1);
  const { fnArray, argsArray } = await page.getOperatorList();
  let now: Matrix = [1, 0, 0, 1, 0, 0];
  const kept: Matrix[] = [];
  const levelLinesMm: number[] = [];
  const uprightLinesMm: number[] = [];
  fnArray.forEach((operator, index) => {
    const args = argsArray[index] as unknown;
    if (operator === OPS.save) kept.push(now);
    else if (operator === OPS.restore) now = kept.pop() ?? now;
    else if (operator === OPS.transform) now = times(now, args as Matrix);
    else if (operator === OPS.constructPath) {
      const box = (args as [number, unknown, Float32Array | null])[2];
      if (box === null) return;
      const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = box;
      const widthPt = Math.hypot((x1 - x0) * now[0], (x1 - x0) * now[1]);
      const heightPt = Math.hypot((y1 - y0) * now[2], (y1 - y0) * now[3]);
      if (widthPt > 0 && heightPt < 0.01) levelLinesMm.push(widthPt / POINTS_PER_MM);
      if (heightPt > 0 && widthPt < 0.01) uprightLinesMm.push(heightPt / POINTS_PER_MM);
    }
  });
  const { items } = await page.getTextContent();
  const pieces = items.flatMap((item) => {
    if (!('str' in item)) return [];
    const leftPt = (item.transform as number[])[4] ?? 0;
    return [{ text: item.str, middleMm: (leftPt + item.width / 2) / POINTS_PER_MM }];
  });
  return { levelLinesMm, uprightLinesMm, text: pieces.map(({ text }) => text).join(' '), pieces };
}

function times(a: Matrix, b: Matrix): Matrix {
  return [
    a[0] * b[0] + a[2] * b[1],
    a[1] * b[0] + a[3] * b[1],
    a[0] * b[2] + a[2] * b[3],
    a[1] * b[2] + a[3] * b[3],
    a[0] * b[4] + a[2] * b[5] + a[4],
    a[1] * b[4] + a[3] * b[5] + a[5],
  ];
}
