import { expect, test } from 'vitest';
import { crossingEdges } from '../../../shared-calc/loading/crossing-edges.ts';

const polygon = (...points: [number, number][]) => points.map(([x, y]) => ({ x, y }));

test('an envelope whose edges meet only at its corners is sound, in either direction round', () => {
  const sound = polygon([1.766, 390], [1.766, 480], [1.802, 600], [1.89, 600], [1.89, 390]);
  expect(crossingEdges(sound)).toBeNull();
  expect(crossingEdges([...sound].reverse())).toBeNull();
});

test('a corner that bends inward and a vertex halfway along a straight edge are sound', () => {
  expect(crossingEdges(polygon([0, 0], [2, 0], [2, 2], [1, 1], [0, 2]))).toBeNull();
  expect(crossingEdges(polygon([0, 0], [1, 0], [2, 0], [2, 2], [0, 2]))).toBeNull();
});

test('the two edges that cross are named by the places of the vertices where they start, from 0', () => {
  // A bow tie: edges 2 to 3 and 4 to 1 cross in the middle.
  expect(crossingEdges(polygon([0, 0], [2, 0], [0, 2], [2, 2]))).toEqual([1, 3]);
});

test('edges that only touch, run back over each other or start twice in one place count as meeting', () => {
  expect(crossingEdges(polygon([0, 0], [4, 0], [4, 2], [2, 0], [0, 2]))).toEqual([0, 2]);
  expect(crossingEdges(polygon([0, 0], [4, 0], [2, 0], [2, 2]))).toEqual([0, 1]);
  expect(crossingEdges(polygon([0, 0], [0, 0], [2, 0], [2, 2]))).not.toBeNull();
  expect(crossingEdges(polygon([0, 0], [1, 0], [2, 0]))).not.toBeNull();
});

test('every polygon of points sorted by their angle around the middle is sound, and exchanging two neighbours is not', () => {
  for (let count = 4; count <= 24; count++) {
    const ring = Array.from({ length: count }, (_, i) => ({
      x: Math.cos((2 * Math.PI * i) / count),
      y: 500 + 100 * Math.sin((2 * Math.PI * i) / count),
    }));
    expect(crossingEdges(ring)).toBeNull();
    const [first, second, ...rest] = ring;
    if (first === undefined || second === undefined) throw new Error('the ring has at least four points');
    expect(crossingEdges([second, first, ...rest])).not.toBeNull();
  }
});
