import { expect, test } from 'vitest';
import { paperScale, plotHeightMm, PX_PER_MM } from '../../../../renderer/screens/loading/paperScale.ts';

test('the arm is drawn at full size where it fits, and at the next readable scale where it does not', () => {
  const fits = paperScale({ arm: [1.8, 1.95], mass: [480, 610] }, 150, 90, 1);
  expect(fits.armRatio).toBe(1);
  expect((fits.armM[1] - fits.armM[0]) * 1000).toBeCloseTo(150, 9);
  const wide = paperScale({ arm: [1.8, 1.951], mass: [480, 610] }, 150, 90, 1);
  expect(wide.armRatio).toBe(2);
  expect((wide.armM[1] - wide.armM[0]) * 1000).toBeCloseTo(300, 9);
  // What is shown stands in the middle.
  expect((wide.armM[0] + wide.armM[1]) / 2).toBeCloseTo(1.8755, 9);
});

test('a millimetre is a readable number of the person’s unit of mass', () => {
  // 130 kg on 90 mm: 1.44 kg a millimetre, so 1.5. In pounds 286.6 on 90 mm: 3.18, so 4.
  expect(paperScale({ arm: [1.8, 1.9], mass: [480, 610] }, 150, 90, 1).massPerMm).toBe(1.5);
  const inPounds = paperScale({ arm: [1.8, 1.9], mass: [480, 610] }, 150, 90, 0.45359237);
  expect(inPounds.massPerMm).toBe(4);
  expect(inPounds.massKg[1] - inPounds.massKg[0]).toBeCloseTo(90 * 4 * 0.45359237, 9);
});

test('arms over metres still get a scale', () => {
  expect(paperScale({ arm: [0, 40], mass: [1000, 30_000] }, 150, 90, 1)).toMatchObject({
    armRatio: 1000,
    massPerMm: 1000,
  });
});

test('more rows leave less height, until the drawing goes to a page of its own', () => {
  expect(plotHeightMm('A4', 13)).toBeGreaterThan(plotHeightMm('US Letter', 13));
  expect(plotHeightMm('A4', 14)).toBeCloseTo(plotHeightMm('A4', 13) - 4.6, 9);
  expect(plotHeightMm('US Letter', 40)).toBe(130);
});

test('a pixel is a ninety-sixth of an inch (CSS Values and Units, 6.2)', () => {
  expect(PX_PER_MM * 25.4).toBeCloseTo(96, 12);
});
