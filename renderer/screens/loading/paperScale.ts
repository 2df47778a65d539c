import type { SheetPaper } from '../../../shared-calc/loading/sheet-changes.ts';

/** Pixels of one millimetre on paper: the definition of the CSS pixel. */
export const PX_PER_MM = 96 / 25.4;

/** What a page leaves for the drawing below its tables, mm: at thirteen rows, for one row more, and its bounds. */
const heightsMm = { A4: 101, 'US Letter': 83 };
const rowMm = 4.6;
const leastHeightMm = 70;
const mostHeightMm = 130;

/** Height of the drawing so that the sheet fills its page; with many rows it goes over to a second one. */
export function plotHeightMm(paper: SheetPaper, rowCount: number): number {
  const leftMm = heightsMm[paper] - rowMm * (rowCount - 13);
  // Where it has to go over, there is room for all of it.
  return leftMm < leastHeightMm ? mostHeightMm : Math.min(leftMm, mostHeightMm);
}

/** What a drawing of arm and mass has to show: m and kg. */
export interface PaperSpan {
  arm: [number, number];
  mass: [number, number];
}

/** A drawing to scale: its axes' ends, and what one millimetre of paper is. */
export interface PaperScale {
  armM: [number, number];
  massKg: [number, number];
  /** Millimetres of arm in one millimetre of paper: 1 where it fits. */
  armRatio: number;
  /** In the person's unit of mass. */
  massPerMm: number;
}

/** Scales that a rule can be read in. */
const armRatios = [1, 2, 2.5, 5, 10, 20, 50, 100];
const massesPerMm = [0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 10, 20, 50, 100];

/**
 * The largest scale at which all fits, the arm at full size if it can be; what is shown stands in the middle.
 * @param widthMm, heightMm of the plotting area
 * @param massUnitKg        kilograms of the person's unit of mass
 */
export function paperScale(
  span: PaperSpan,
  widthMm: number,
  heightMm: number,
  massUnitKg: number,
): PaperScale {
  const armMm = (span.arm[1] - span.arm[0]) * 1000;
  const mass = (span.mass[1] - span.mass[0]) / massUnitKg;
  const armRatio = firstThatFits(armRatios, armMm / widthMm);
  const massPerMm = firstThatFits(massesPerMm, mass / heightMm);
  return {
    armM: around(span.arm, (widthMm * armRatio) / 1000),
    massKg: around(span.mass, heightMm * massPerMm * massUnitKg),
    armRatio,
    massPerMm,
  };
}

/** A span beyond the last of the scales gets the power of ten above it. */
function firstThatFits(scales: readonly number[], needed: number): number {
  return scales.find((scale) => scale >= needed * (1 - 1e-9)) ?? 10 ** Math.ceil(Math.log10(needed));
}

function around([from, to]: [number, number], length: number): [number, number] {
  const middle = (from + to) / 2;
  return [middle - length / 2, middle + length / 2];
}
