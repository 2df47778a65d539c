import { expect, test } from 'vitest';
import { render } from 'vitest-browser-svelte';
import Drawing from './Drawing.svelte';
import { savedDrawing } from './savedDrawing.ts';
import { pngBlob, svgText } from '../../../renderer/plot/savePlot.ts';
import '../../../renderer/ui/tokens.css';
import '../../../renderer/ui/base.css';
import '../../../renderer/plot/plot.css';

// Each stored drawing was looked at by eye before it was kept; a difference is to be looked at the same way
// (the new one is written with `vitest -u` and shows in the commit).
test.each([
  'axes',
  'limit',
  'curves',
  'band',
  'hollow',
  'measure',
  'callouts',
  'ellipse',
  'typed',
  'isolines',
])('the drawing of %s is as it was looked at', async (part) => {
  await document.fonts.ready;
  const screen = await render(Drawing, { part });
  const svg = screen.container.querySelector('svg');
  await expect(savedDrawing(svg)).toMatchFileSnapshot(`drawings/${part}.svg`);
});

test('a saved figure stands alone: no classes, no variables, the font inside', async () => {
  const screen = await render(Drawing, { part: 'limit' });
  const svg = screen.container.querySelector('svg');
  if (svg === null) throw new Error('nothing was drawn');
  const text = await svgText(svg);
  expect(text).not.toContain('var(');
  expect(text).not.toContain('class=');
  expect(text).toContain('@font-face');
  const parsed = new DOMParser().parseFromString(text, 'image/svg+xml');
  expect(parsed.querySelector('parsererror')).toBeNull();
  const limit = [...parsed.querySelectorAll('path')].at(-1);
  // --ink of the light theme, tokens.css: #181d1a
  expect(limit?.getAttribute('stroke')).toBe('rgb(24, 29, 26)');
  expect(text).not.toContain('style=');
});

test('a saved picture has twice the figure’s size and is not empty', async () => {
  const screen = await render(Drawing, { part: 'limit' });
  const svg = screen.container.querySelector('svg');
  if (svg === null) throw new Error('nothing was drawn');
  const picture = await createImageBitmap(await pngBlob(svg));
  // 400 x 300 with 12 px of margin on each side, doubled.
  expect([picture.width, picture.height]).toEqual([848, 648]);
  const canvas = new OffscreenCanvas(picture.width, picture.height);
  const context = canvas.getContext('2d');
  context?.drawImage(picture, 0, 0);
  const pixels = context?.getImageData(0, 0, picture.width, picture.height).data ?? [];
  const tones = new Set<number>();
  for (let i = 0; i < pixels.length; i += 4) tones.add(pixels[i] ?? 0);
  expect(tones.size).toBeGreaterThan(5);
});
