import { expect, test } from 'vitest';
import { asPalettePng } from './harness/palette-png.ts';
import { testBrowser } from './harness/test-browser.ts';

test('a picture of few colours keeps every pixel when it is given a palette, as the browser itself reads both', async () => {
  const page = await (await testBrowser()).newPage({ viewport: { width: 97, height: 61 } });
  // Edges of many kinds, so that the browser's encoder has reason to use each of its filters; fewer than 256 colours.
  await page.setContent(
    `<style>body { margin: 0; background: repeating-linear-gradient(37deg, #123456 0 3px, #fedcba 3px 7px, #fff 7px 8px);
     image-rendering: pixelated } div { height: 20px; background: linear-gradient(90deg, #000, #333) }</style><div></div>`,
  );
  const png = await page.screenshot();
  const sameAndColours = await page.evaluate(
    async (both) => {
      const [before = [], after = []] = await Promise.all(
        both.map(async (base64) => {
          const image = new Image();
          image.src = `data:image/png;base64,${base64}`;
          await image.decode();
          const canvas = new OffscreenCanvas(image.width, image.height);
          const context = canvas.getContext('2d');
          context?.drawImage(image, 0, 0);
          return [
            ...new Uint32Array(context?.getImageData(0, 0, image.width, image.height).data.buffer ?? []),
          ];
        }),
      );
      return {
        pixels: after.length,
        colours: new Set(before).size,
        different: before.filter((pixel, index) => pixel !== after[index]).length,
      };
    },
    [png, asPalettePng(png)].map((each) => each.toString('base64')),
  );
  expect(sameAndColours.pixels).toBe(97 * 61);
  expect(sameAndColours.colours).toBeGreaterThan(3);
  expect(sameAndColours.colours).toBeLessThanOrEqual(256);
  expect(sameAndColours.different).toBe(0);
});
