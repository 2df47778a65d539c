import { InputProblem, requireRange } from '../problem.ts';

/** What a manual's table may be entered with. */
export type TableAxis = 'massKg' | 'pressureAltitudeM' | 'temperatureC' | 'headwindMs';

export type TablePlace = Readonly<Partial<Record<TableAxis, number>>>;

/** One printed figure. `null` is a cell that the manual leaves blank. */
export interface TableCell {
  readonly at: TablePlace;
  readonly value: number | null;
}

/** A table as a tree: the steps of the first axis, under each its own steps of the next, so that it may be ragged. */
export interface PerformanceTable {
  readonly axes: readonly TableAxis[];
  readonly root: TableNode;
}

export type TableNode = { readonly steps: readonly TableStep[] } | { readonly value: number | null };
export interface TableStep {
  readonly at: number;
  readonly then: TableNode;
}

/** Allowed places, for cells and for what is asked: wide enough for every aeroplane of the class and every field. */
export const AXIS_RANGES: Readonly<
  Record<TableAxis, { min: number; max: number; unit: string; worse: 'more' | 'less' }>
> = {
  massKg: { min: 50, max: 5000, unit: 'kg', worse: 'more' },
  pressureAltitudeM: { min: -1500, max: 7000, unit: 'm', worse: 'more' },
  temperatureC: { min: -60, max: 65, unit: 'degC', worse: 'more' },
  headwindMs: { min: -60, max: 60, unit: 'm/s', worse: 'less' },
};

/** A place converted from feet or pounds meets the same printed place: a billionth, at least of one. */
const SAME_PLACE = 1e-9;

/**
 * A table from its cells as printed.
 * @param axes  outermost first, each once; under each step of one axis the next may have steps of its own
 * @param cells each with a place on every axis and no other
 * @throws InputProblem for no axis or cell, an axis named twice, a place missing or too many, or a cell typed twice
 * @throws RangeProblem for a place outside 50 to 5000 kg, −1500 to 7000 m, −60 to 65 degC, −60 to 60 m/s
 */
export function performanceTable(axes: readonly TableAxis[], cells: readonly TableCell[]): PerformanceTable {
  if (axes.length === 0) throw new InputProblem('axes', 'a table needs at least one axis');
  if (new Set(axes).size < axes.length) throw new InputProblem('axes', 'an axis is named twice');
  if (cells.length === 0) throw new InputProblem('cells', 'a table needs at least one cell');
  cells.forEach((cell, i) => {
    const field = `cells[${String(i)}]`;
    for (const axis of axes) requirePlace(`${field}.${axis}`, axis, cell.at[axis]);
    const given = Object.keys(cell.at).length;
    if (given > axes.length)
      throw new InputProblem(field, 'has a place on an axis that the table does not have');
    if (cell.value !== null) requireRange(`${field}.value`, cell.value, -1e6, 1e6, '');
  });
  return { axes, root: nodeOf(axes, cells) };
}

/** A printed figure that an answer rests on, with its share in it. */
export interface CellUsed {
  readonly at: TablePlace;
  readonly value: number;
  /** More than 0; the shares of an answer add up to 1. */
  readonly weightRatio: number;
}

/** An axis on which less favourable air or load was taken than asked, because the table does not go so far. */
export interface HeldAtEdge {
  readonly axis: TableAxis;
  readonly asked: number;
  readonly edge: number;
}

export type TableAnswer =
  | {
      readonly kind: 'value';
      readonly value: number;
      /** Colder, lower, lighter or more headwind than printed: the truth is no worse than `value`, and no better is promised. */
      readonly heldAtEdge: readonly HeldAtEdge[];
      readonly cellsUsed: readonly CellUsed[];
    }
  /** Hotter, higher, heavier or more tailwind than printed, at the steps of the axes before it. */
  | {
      readonly kind: 'beyondTable';
      readonly axis: TableAxis;
      readonly asked: number;
      readonly edge: number;
      readonly under: TablePlace;
    }
  /** A cell that the manual leaves blank would be needed. */
  | { readonly kind: 'blankCell'; readonly at: TablePlace };

/**
 * Read a table between its printed cells, linear in each axis.
 * Beyond its favourable edges (colder, lower, lighter, more headwind) the edge's figure is answered and said to be held;
 * beyond the others nothing is answered. Nothing is extrapolated.
 * @param place what is asked; axes that the table does not have are not used
 * @throws InputProblem when a place on one of the table's axes is missing
 * @throws RangeProblem when a place lies outside the ranges of `performanceTable`
 * @source Pilot's Handbook of Aeronautical Knowledge, FAA-H-8083-25C, ch. 11, interpolation
 */
export function readTable(table: PerformanceTable, place: TablePlace): TableAnswer {
  for (const axis of table.axes) requirePlace(axis, axis, place[axis]);
  return readNode(table.root, table.axes, place, {});
}

/** A cell that gets better where the air or the load gets worse: a slip in typing, more likely than a truth. */
export interface TableOddity {
  readonly axis: TableAxis;
  readonly easier: { readonly at: TablePlace; readonly value: number };
  readonly harder: { readonly at: TablePlace; readonly value: number };
}

/**
 * Neighbouring cells in the wrong order, as data for a check with the manual. The edges' "no better than" rests on the order.
 * @param better whether more (a climb rate) or less (a distance) is better
 */
export function tableOddities(
  cells: readonly TableCell[],
  axes: readonly TableAxis[],
  better: 'more' | 'less',
): TableOddity[] {
  return axes.flatMap((axis) => {
    const rest = axes.filter((other) => other !== axis);
    const lines = Map.groupBy(cells, (cell) => rest.map((other) => String(cell.at[other])).join(' '));
    return [...lines.values()].flatMap((line) => outOfOrder(line, axis, better));
  });
}

function outOfOrder(line: readonly TableCell[], axis: TableAxis, better: 'more' | 'less'): TableOddity[] {
  const sign = AXIS_RANGES[axis].worse === 'more' ? 1 : -1;
  const printed = line
    .flatMap(({ at, value }) => (value === null ? [] : [{ at, value, hardness: sign * (at[axis] ?? 0) }]))
    .sort((a, b) => a.hardness - b.hardness);
  return printed.flatMap((harder, i) => {
    const easier = printed[i - 1];
    if (easier === undefined) return [];
    const improves = better === 'less' ? harder.value < easier.value : harder.value > easier.value;
    if (!improves) return [];
    return [
      {
        axis,
        easier: { at: easier.at, value: easier.value },
        harder: { at: harder.at, value: harder.value },
      },
    ];
  });
}

function requirePlace(field: string, axis: TableAxis, value: number | undefined): void {
  const { min, max, unit } = AXIS_RANGES[axis];
  if (value === undefined) throw new InputProblem(field, 'is missing');
  requireRange(field, value, min, max, unit);
}

/** Whether two places on an axis are the same printed place. */
export function isSamePlace(a: number, b: number): boolean {
  return Math.abs(a - b) <= SAME_PLACE * Math.max(1, Math.abs(a));
}

function nodeOf(axes: readonly TableAxis[], cells: readonly TableCell[]): TableNode {
  const [axis, ...rest] = axes;
  if (axis === undefined) {
    const [cell, again] = cells;
    if (again !== undefined)
      throw new InputProblem('cells', `the cell at ${placeText(again.at)} is typed twice`);
    return { value: cell?.value ?? null };
  }
  const sorted = cells.toSorted((a, b) => (a.at[axis] ?? 0) - (b.at[axis] ?? 0));
  const groups: { at: number; cells: TableCell[] }[] = [];
  for (const cell of sorted) {
    const at = cell.at[axis] ?? 0;
    const group = groups.at(-1);
    if (group !== undefined && isSamePlace(group.at, at)) group.cells.push(cell);
    else groups.push({ at, cells: [cell] });
  }
  return { steps: groups.map((group) => ({ at: group.at, then: nodeOf(rest, group.cells) })) };
}

function readNode(
  node: TableNode,
  axes: readonly TableAxis[],
  place: TablePlace,
  under: TablePlace,
): TableAnswer {
  if ('value' in node) {
    if (node.value === null) return { kind: 'blankCell', at: under };
    return {
      kind: 'value',
      value: node.value,
      heldAtEdge: [],
      cellsUsed: [{ at: under, value: node.value, weightRatio: 1 }],
    };
  }
  const [axis, ...rest] = axes;
  const { steps } = node;
  const first = steps[0];
  const last = steps.at(-1);
  if (axis === undefined || first === undefined || last === undefined)
    throw new Error('a table has steps on each axis');
  const asked = place[axis] ?? NaN;
  const at = (step: TableStep) => readNode(step.then, rest, place, { ...under, [axis]: step.at });
  const same = steps.find((step) => isSamePlace(step.at, asked));
  if (same !== undefined) return at(same);
  if (asked < first.at || asked > last.at) {
    const edge = asked < first.at ? first : last;
    const isEasier = asked < edge.at === (AXIS_RANGES[axis].worse === 'more');
    if (!isEasier) return { kind: 'beyondTable', axis, asked, edge: edge.at, under };
    const answer = at(edge);
    if (answer.kind !== 'value') return answer;
    return { ...answer, heldAtEdge: [{ axis, asked, edge: edge.at }, ...answer.heldAtEdge] };
  }
  const upper = steps.findIndex((step) => step.at > asked);
  const above = steps[upper] ?? last;
  const below = steps[upper - 1] ?? first;
  return between(at(below), at(above), (asked - below.at) / (above.at - below.at));
}

function between(below: TableAnswer, above: TableAnswer, shareAbove: number): TableAnswer {
  if (below.kind !== 'value') return below;
  if (above.kind !== 'value') return above;
  const scaled = (answer: typeof below, share: number) =>
    answer.cellsUsed.map((cell) => ({ ...cell, weightRatio: cell.weightRatio * share }));
  const held = [...below.heldAtEdge, ...above.heldAtEdge];
  return {
    kind: 'value',
    value: below.value + shareAbove * (above.value - below.value),
    heldAtEdge: held.filter(
      (one, i) => held.findIndex((o) => o.axis === one.axis && o.edge === one.edge) === i,
    ),
    cellsUsed: [...scaled(below, 1 - shareAbove), ...scaled(above, shareAbove)],
  };
}

function placeText(at: TablePlace): string {
  return Object.entries(at)
    .map(([axis, value]) => `${axis} ${String(value)}`)
    .join(', ');
}
