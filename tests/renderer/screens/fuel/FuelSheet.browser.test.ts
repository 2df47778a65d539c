import axe from 'axe-core';
import { beforeEach, expect, test } from 'vitest';
import { render } from 'vitest-browser-svelte';
import App from '../../../../renderer/app/App.svelte';
import { showAppearance } from '../../../../renderer/app/appearance.ts';
import { makeClient } from '../../../../renderer/app/client.ts';
import { sheets } from '../../../../renderer/app/sheets.svelte.ts';
import { partsBridge, type StandIn } from '../../../../renderer/ui/parts/partsBridge.ts';
import { exampleAircraft } from '../../../main/example-aircraft.ts';
import { exampleFillTest } from '../../../main/example-fill-test.ts';
import '../../../../renderer/ui/tokens.css';
import '../../../../renderer/ui/base.css';
import '../../../../renderer/plot/plot.css';

const status = {
  libraryPath: '/home/pilot/own.tarewing',
  isDemo: false,
  problem: null,
};

beforeEach(() => {
  showAppearance('light', 100);
});

const heading = () => document.querySelector('h1')?.textContent ?? '';

async function fuel(standIns: Record<string, StandIn> = {}) {
  const aircraft = exampleAircraft();
  const bridge = partsBridge({
    'aircraft.list': () => ({
      aircraft: [{ id: aircraft.id, name: aircraft.name, identification: '' }],
      currentId: aircraft.id,
    }),
    'aircraft.get': () => ({ aircraft, weighings: [], currentWeighingId: null }),
    'fillTest.list': ({ tankId }: { tankId: string }) => [exampleFillTest('may-test', tankId)],
    'calibration.list': () => [],
    'calibration.standing': () => [{ tankId: 'front', name: 'Front tank', adoptedOn: null, checks: null }],
    'container.list': () => [],
    ...standIns,
  });
  // Read before the window is shown, as its start does.
  await sheets.fetch('fuel');
  const screen = await render(App, {
    client: makeClient(bridge),
    first: { status, settings: {}, screen: 'fuel' },
  });
  return { screen, bridge };
}

test('the answer names the reading, how finely it was read, and what to plan on', async () => {
  const { screen } = await fuel();
  // The first fit waits for its worker to be read.
  await expect.poll(heading, { timeout: 10_000 }).toContain('Reading 1/2 to the nearest eighth: plan on');
  await expect.element(screen.getByText(/Check against a dipstick/)).toBeVisible();
});

test('too few readings are said with what is missing, and the curve waits to be adopted', async () => {
  const few = exampleFillTest('few', 'front');
  for (const run of few.runs) run.pours = run.pours.slice(0, 3);
  const { screen } = await fuel({ 'fillTest.list': () => [few] });
  await expect.poll(heading).toContain('2 of at least 3 different');
  await expect
    .element(screen.getByRole('button', { name: 'Adopt this curve' }))
    .toHaveAttribute('aria-disabled', 'true');
  expect(screen.container.querySelector('svg.figure .path')).toBeNull();
});

test('a refused save takes the figure back and says why below its field', async () => {
  const { screen } = await fuel({
    'fillTest.put': () => {
      throw new Error('The disk is full. Nothing was changed. Make room and do it again.');
    },
  });
  const volume = screen.getByLabelText('Pour 2, volume');
  await volume.fill('7');
  await screen.getByLabelText('Pour 3, volume').click();
  await expect.element(screen.getByText(/The disk is full/)).toBeVisible();
  await expect.element(volume).toHaveValue('7');
  await expect.poll(heading).toContain('plan on');
});

test.each(['light', 'dark'] as const)('the screen passes the accessibility rules in %s', async (theme) => {
  const { screen } = await fuel();
  showAppearance(theme, 100);
  await expect.element(screen.getByRole('slider', { name: 'Gauge reading' })).toBeVisible();
  // Colours on their way from one theme to the other are not what is judged.
  await Promise.all(document.getAnimations().map((animation) => animation.finished));
  const { violations } = await axe.run(document.body, {
    runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'],
  });
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`)).toEqual(
    [],
  );
});

test('no two names on the plot touch each other', async () => {
  const { screen } = await fuel();
  await expect.element(screen.getByRole('slider', { name: 'Gauge reading' })).toBeVisible();
  await document.fonts.ready;
  const boxes = [...screen.container.querySelectorAll('svg.figure text')]
    // A name set along its line has a box much larger than itself.
    .filter((text) => !(text.getAttribute('transform') ?? '').includes('rotate'))
    .map((text) => ({ words: text.textContent, box: text.getBoundingClientRect() }));
  const touching = boxes.flatMap((one, index) =>
    boxes
      .slice(index + 1)
      .filter(
        ({ box }) =>
          box.left < one.box.right - 1 &&
          one.box.left < box.right - 1 &&
          // Line boxes are taller than the figures in them.
          box.top < one.box.bottom - 5 &&
          one.box.top < box.bottom - 5,
      )
      .map((other) => `${one.words} | ${other.words}`),
  );
  expect(touching).toEqual([]);
});
