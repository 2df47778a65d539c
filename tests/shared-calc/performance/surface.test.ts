import { expect, test } from 'vitest';
import { surfaceFactorRatio, surfaceKindOf } from '../../../shared-calc/performance/surface.ts';

test.each([
  ['asphalt', 'paved'],
  ['ASPH', 'paved'],
  ['CON', 'paved'],
  ['concrete, wet', 'wetPaved'],
  ['gravel', 'gravel'],
  ['GRVL', 'gravel'],
  ['Turf', 'dryGrass'],
  ['GRS', 'dryGrass'],
  ['wet grass', 'wetGrass'],
  ['dirt', 'gravel'],
  ['wet earth', 'softGround'],
  ['sand', 'softGround'],
  // The worst part counts.
  ['asphalt/turf', 'dryGrass'],
  ['TURF-SAND', 'softGround'],
  ['water', null],
  ['', null],
])('a runway of "%s" is %s', (words, kind) => {
  expect(surfaceKindOf(words)).toBe(kind);
});

test('factors are the published ones, against the surface that the manual printed for, and never help', () => {
  // UK CAA SafetySense Leaflet 7: dry grass 1.2 and 1.15, wet grass 1.3 and 1.35.
  expect(surfaceFactorRatio('dryGrass', 'paved', 'takeOff')).toBe(1.2);
  expect(surfaceFactorRatio('wetGrass', 'paved', 'landing')).toBe(1.35);
  expect(surfaceFactorRatio('wetGrass', 'dryGrass', 'takeOff')).toBeCloseTo(1.3 / 1.2, 12);
  expect(surfaceFactorRatio('paved', 'dryGrass', 'takeOff')).toBe(1);
});
