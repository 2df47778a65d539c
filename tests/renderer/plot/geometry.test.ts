import fc from 'fast-check';
import { expect, test } from 'vitest';
import { contourLines } from '../../../renderer/plot/contourLines.ts';
import { ellipseOf } from '../../../renderer/plot/ellipseOf.ts';
import { keyed, snapped } from '../../../renderer/plot/gripValue.ts';
import { labelOnLine } from '../../../renderer/plot/labelOnLine.ts';
import { limitTicks } from '../../../renderer/plot/limitTicks.ts';
import { arrowHead, measureLayout } from '../../../renderer/plot/measureLayout.ts';
import { crosses, overlaps, placeLabels } from '../../../renderer/plot/placeLabels.ts';
import { spreadCallouts } from '../../../renderer/plot/spreadCallouts.ts';
import { thinLabels } from '../../../renderer/plot/thinLabels.ts';
import { tiesAlong } from '../../../renderer/plot/tiesAlong.ts';
import { zoomedDomain } from '../../../renderer/plot/zoom.svelte.ts';

// What is expected here follows from plane geometry, worked out beside each figure.

test('callouts never touch, keep their order and stay above the bottom of their column', () => {
  const wish = fc.record({
    yPx: fc.integer({ min: 0, max: 600 }),
    heightPx: fc.integer({ min: 10, max: 50 }),
  });
  fc.assert(
    fc.property(fc.array(wish, { minLength: 1, maxLength: 12 }), (wishes) => {
      const at = spreadCallouts(wishes, 0, 600);
      const placed = wishes.map((one, index) => ({ ...one, atPx: at[index] ?? NaN }));
      const order = [...placed].sort((a, b) => a.atPx - b.atPx);
      for (const [index, one] of order.entries()) {
        expect(one.atPx + one.heightPx).toBeLessThanOrEqual(600);
        const next = order[index + 1];
        if (next !== undefined) expect(next.atPx).toBeGreaterThanOrEqual(one.atPx + one.heightPx);
      }
    }),
  );
});

test('callouts that already stand apart stay at their points', () => {
  const wishes = [
    { yPx: 300, heightPx: 30 },
    { yPx: 100, heightPx: 30 },
  ];
  expect(spreadCallouts(wishes, 0, 600)).toEqual([300, 100]);
});

test('every second label is left out where neighbours would touch', () => {
  // Ticks 20 apart, labels 30 wide: 40 apart leaves 10, and 8 is asked.
  expect(thinLabels([0, 20, 40, 60], [30, 30, 30, 30], 8)).toBe(2);
  expect(thinLabels([0, 20, 40, 60], [10, 10, 10, 10], 8)).toBe(1);
  expect(thinLabels([0, 1, 2], [30, 30, 30], 8)).toBe(3);
});

test('the strokes of a limit lie on its forbidden side', () => {
  // Travelling to the right on the screen, the right-hand side is below (larger y).
  const strokes = (side: 1 | -1) =>
    [
      ...limitTicks(
        [
          { x: 0, y: 50 },
          { x: 70, y: 50 },
        ],
        side,
        1,
      ).matchAll(/l([-\d.]+),([-\d.]+)/g),
    ].map((m) => Number(m[2]));
  expect(strokes(1)).toHaveLength(10);
  expect(strokes(1).every((dy) => dy > 0)).toBe(true);
  expect(strokes(-1).every((dy) => dy < 0)).toBe(true);
});

test('ties keep their distance around a corner', () => {
  const path = tiesAlong(
    [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 14 },
    ],
    8,
    3,
  );
  // At 4 along the first side, then at 12 and 20 of 24 along the way: 2 and 10 down the second.
  expect(path).toBe('M4,-3L4,3M13,2L7,2M13,10L7,10');
});

test('a measured line breaks for its figure, and leaves the figure beside it where it is short', () => {
  const long = measureLayout({ x: 0, y: 100 }, { x: 200, y: 100 }, 40, 16);
  expect(long.lines).toEqual([
    [
      { x: 0, y: 100 },
      { x: 75, y: 100 },
    ],
    [
      { x: 125, y: 100 },
      { x: 200, y: 100 },
    ],
  ]);
  const short = measureLayout({ x: 0, y: 100 }, { x: 60, y: 100 }, 40, 16);
  expect(short.lines).toHaveLength(1);
  expect(short.label.y).toBeLessThan(100);
});

test('an arrowhead points along its line', () => {
  const [tip, left, right] = arrowHead({ x: 0, y: 0 }, { x: 10, y: 0 }, 5);
  expect(tip).toEqual({ x: 10, y: 0 });
  expect(left.x).toBeCloseTo(5, 9);
  expect(right.x).toBeCloseTo(5, 9);
  expect(left.y).toBeCloseTo(-right.y, 9);
});

test('labels find places clear of each other, of lines and of the edge', () => {
  const bounds = { left: 0, top: 0, right: 400, bottom: 300 };
  const line = [
    { x: 0, y: 150 },
    { x: 400, y: 150 },
  ];
  const wishes = [120, 130, 140, 150].map((x) => ({ at: { x, y: 150 }, widthPx: 60, heightPx: 14 }));
  const placed = placeLabels(wishes, { lines: [line], boxes: [] }, bounds);
  for (const [index, one] of placed.entries()) {
    expect(crosses(line, one.box)).toBe(false);
    for (const other of placed.slice(index + 1)) expect(overlaps(one.box, other.box)).toBe(false);
    expect(one.box.left).toBeGreaterThanOrEqual(0);
    expect(one.box.bottom).toBeLessThanOrEqual(300);
  }
});

test('a segment that passes a box by does not touch it, one through a corner does', () => {
  const box = { left: 10, top: 10, right: 20, bottom: 20 };
  expect(
    crosses(
      [
        { x: 0, y: 0 },
        { x: 9, y: 30 },
      ],
      box,
    ),
  ).toBe(false);
  expect(
    crosses(
      [
        { x: 0, y: 20 },
        { x: 20, y: 0 },
      ],
      box,
    ),
  ).toBe(true);
  expect(
    crosses(
      [
        { x: 12, y: 12 },
        { x: 13, y: 13 },
      ],
      box,
    ),
  ).toBe(true);
});

test('a grip snaps to its steps and stops at its ends, which need not be on the grid', () => {
  const range = { min: 0, max: 110.3, step: 0.5 };
  expect(snapped(86.26, range)).toBe(86.5);
  expect(snapped(200, range)).toBe(110.3);
  expect(snapped(-3, range)).toBe(0);
  expect(snapped(0.1 + 0.2, { min: 0, max: 1, step: 0.1 })).toBe(0.3);
});

test.each([
  ['ArrowUp', false, 10.5],
  ['ArrowLeft', false, 9.5],
  ['ArrowRight', true, 15],
  ['PageDown', false, 5],
  ['Home', false, 0],
  ['End', false, 20],
  ['a', false, null],
])('%s with Shift %s moves a grip at 10 to %s', (key, isShifted, to) => {
  expect(keyed(key, isShifted, 10, { min: 0, max: 20, step: 0.5 })).toBe(to);
});

test('the ellipse of nine in ten has the radius of the Rayleigh distribution', () => {
  // sqrt(-2 ln 0.1) = 2.145966; NIST/SEMATECH e-Handbook: chi-squared with 2 degrees of freedom at 0.90 is 4.605.
  const circle = ellipseOf({ varianceX: 1, varianceY: 1, covarianceXY: 0 }, 1, -1, 0.9);
  expect(circle.rx).toBeCloseTo(Math.sqrt(4.605), 3);
  expect(circle.ry).toBeCloseTo(circle.rx, 9);
});

test('fully correlated errors make a line along the diagonal, rising on a screen whose y runs down', () => {
  const line = ellipseOf({ varianceX: 4, varianceY: 4, covarianceXY: 4 }, 10, -10, 0.9);
  expect(line.ry).toBeCloseTo(0, 6);
  expect(line.angleDeg).toBeCloseTo(-45, 6);
});

// A plane z = column: isolines are straight and lie where the threshold says, by linear interpolation.
test('isolines of a plane are straight lines in place, without the frame', () => {
  const columns = 8;
  const rows = 6;
  const values = Array.from({ length: columns * rows }, (_, index) => (index % columns) - 1);
  const [contour] = contourLines({ values, columns, rows }, [2.25]);
  expect(contour?.lines).toHaveLength(1);
  const inside = contour?.lines[0]?.filter(([, row]) => row >= 0 && row <= rows - 3) ?? [];
  expect(inside.length).toBeGreaterThan(2);
  for (const [column] of inside) expect(column).toBeCloseTo(2.25, 6);
});

test('an island is one closed isoline', () => {
  const columns = 7;
  const values = Array.from({ length: columns * columns }, (_, index) => (index === 24 ? 10 : 0));
  const [contour] = contourLines({ values, columns, rows: columns }, [5]);
  const line = contour?.lines[0] ?? [];
  expect(contour?.lines).toHaveLength(1);
  expect(line[0]).toEqual(line.at(-1));
});

test('a label on a line is upright and lies where the line is straight', () => {
  const bounds = { left: 0, top: 0, right: 300, bottom: 300 };
  const line = Array.from({ length: 61 }, (_, index) => {
    const x = 280 - index * 4;
    return { x, y: x > 150 ? 150 : 150 + 40 * Math.sin(x / 6) };
  });
  const label = labelOnLine(line, 50, bounds);
  expect(label?.angleDeg).toBeCloseTo(0, 6);
  expect(label?.at.x).toBeGreaterThan(150);
  expect(
    labelOnLine(
      [
        { x: 100, y: 100 },
        { x: 110, y: 100 },
      ],
      50,
      bounds,
    ),
  ).toBeNull();
});

test('looking closer keeps the place under the pointer and never leaves the whole', () => {
  expect(zoomedDomain([0, 100], 0.5, 25, [0, 100])).toEqual([12.5, 62.5]);
  expect(zoomedDomain([50, 100], 2, 60, [0, 100])).toEqual([0, 100]);
  expect(zoomedDomain([0, 50], 1.5, 0, [0, 100])).toEqual([0, 75]);
});
