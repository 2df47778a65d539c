import { expect, test } from 'vitest';
import { Zoom } from '../../../renderer/plot/zoom.svelte.ts';

const whole = { x: [0, 100], y: [0, 10] } as const;
const wheel = (deltaY: number, ctrlKey: boolean) =>
  new WheelEvent('wheel', { deltaY, ctrlKey, cancelable: true });

test('the wheel looks closer only with Ctrl, around the pointer', () => {
  const zoom = new Zoom(() => whole);
  const plain = wheel(-300, false);
  zoom.wheel(plain, { x: 25, y: 5 });
  expect(zoom.isZoomed).toBe(false);
  expect(plain.defaultPrevented).toBe(false);
  const turned = wheel(-300, true);
  zoom.wheel(turned, { x: 25, y: 5 });
  expect(turned.defaultPrevented).toBe(true);
  // A factor of 1/e: 25 stays at a quarter of the stretch.
  expect(zoom.x[1] - zoom.x[0]).toBeCloseTo(100 / Math.E, 9);
  expect((25 - zoom.x[0]) / (zoom.x[1] - zoom.x[0])).toBeCloseTo(0.25, 9);
});

test('looking wider ends at the whole, which is no zoom any more', () => {
  const zoom = new Zoom(() => whole);
  zoom.by(0.5);
  expect(zoom.x).toEqual([25, 75]);
  zoom.by(3);
  expect(zoom.isZoomed).toBe(false);
  expect(zoom.y).toEqual([0, 10]);
});

test('there is an end to looking closer', () => {
  const zoom = new Zoom(() => whole);
  for (let i = 0; i < 50; i += 1) zoom.by(0.5);
  expect(zoom.x[1] - zoom.x[0]).toBeGreaterThanOrEqual(100 / 64);
});
