import axe from 'axe-core';
import { beforeEach, expect, test } from 'vitest';
import { render } from 'vitest-browser-svelte';
import App from '../../../../renderer/app/App.svelte';
import { showAppearance } from '../../../../renderer/app/appearance.ts';
import { makeClient } from '../../../../renderer/app/client.ts';
import { sheets } from '../../../../renderer/app/sheets.svelte.ts';
import { partsBridge, type StandIn } from '../../../../renderer/ui/parts/partsBridge.ts';
import { calibrate } from '../../../../shared-calc/fuel/fit/calibrate.ts';
import { exampleAircraft } from '../../../main/example-aircraft.ts';
import { exampleFillTest } from '../../../main/example-fill-test.ts';
import { exampleCheck } from '../../../shared-calc/fuel/checks/example-checks.ts';
import '../../../../renderer/ui/tokens.css';
import '../../../../renderer/ui/base.css';
import '../../../../renderer/plot/plot.css';

const status = { libraryPath: '/home/pilot/own.tarewing', isDemo: false, problem: null };
const heading = () => document.querySelector('h1')?.textContent.replaceAll('\u00a0', ' ') ?? '';

beforeEach(() => {
  showAppearance('light', 100);
});

async function fuel(standIns: Record<string, StandIn>) {
  const aircraft = exampleAircraft();
  const measured = exampleFillTest('may-test', 'front');
  const found = calibrate([measured], [], { capacityL: 50, unusableL: 1.5 });
  if (found.kind !== 'curve') throw new Error('the example makes a curve');
  const adopted = {
    id: 'adopted',
    tankId: 'front',
    testIds: ['may-test'],
    checkIds: [],
    adoptedOn: '2026-05-10',
    methodVersion: 4,
    scale: measured.scale,
    curve: found.curve,
    byHand: { correctedCount: 0, pinnedCount: 0, smoothness: null },
    withdrawn: false,
  };
  const bridge = partsBridge({
    'aircraft.list': () => ({
      aircraft: [{ id: aircraft.id, name: aircraft.name, identification: '' }],
      currentId: aircraft.id,
    }),
    'aircraft.get': () => ({ aircraft, weighings: [], currentWeighingId: null }),
    'fillTest.list': () => [measured],
    'calibration.list': () => [adopted],
    'calibration.refits': () => found.refits,
    'calibration.standing': () => [
      { tankId: 'front', name: 'Front tank', adoptedOn: '2026-05-10', checks: null },
    ],
    'container.list': () => [],
    'fuelCheck.list': () => [],
    'dipstick.get': () => null,
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

const refill = exampleCheck({ tankId: 'front', refillL: 16.5 });

test('checks are judged, listed with what they say, and the sheet has no fault of access', async () => {
  const { screen } = await fuel({
    'fuelCheck.list': () => [
      refill,
      exampleCheck({ id: 'full', tankId: 'front', before: { at: 'fullStop' }, checkedOn: '2026-08-01' }),
      {
        kind: 'zero',
        id: 'zero',
        tankId: 'front',
        checkedOn: '2026-06-01',
        attitude: 'level flight',
        reading: { at: 'scale', positionRatio: 0.125 },
        note: '',
        withdrawn: false,
      },
    ],
  });
  await screen.getByRole('radio', { name: 'checks' }).click();
  await expect.poll(heading).toContain('The one check agrees with the curve');
  await expect.element(screen.getByText('not judged: a reading at a stop')).toBeVisible();
  await expect.element(screen.getByText(/Reads 1\/8 with no usable fuel left/)).toBeVisible();
  const { violations } = await axe.run(screen.container);
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
});

test('a curve without its kept curves judges nothing, and the sheet says what to do', async () => {
  const { screen } = await fuel({ 'calibration.refits': () => null, 'fuelCheck.list': () => [refill] });
  await screen.getByRole('radio', { name: 'checks' }).click();
  await expect.poll(heading).toContain('Adopt it anew, and checks can be judged.');
});

test('a check waits for its figures and is not logged without them', async () => {
  const { screen } = await fuel({});
  await screen.getByRole('radio', { name: 'checks' }).click();
  await expect.poll(heading).toBe('No check can be held against the curve yet.');
  await expect
    .element(screen.getByText('Waits for the reading before, the reading after and the fuel bought.'))
    .toBeVisible();
  await expect
    .element(screen.getByRole('button', { name: 'Log this check' }))
    .toHaveAttribute('aria-disabled', 'true');
});

test('without a dipstick its part says what one is for', async () => {
  const { screen } = await fuel({});
  await screen.getByRole('radio', { name: 'dipstick' }).click();
  await expect.poll(heading).toContain('the second means of knowing');
  await expect.element(screen.getByRole('button', { name: 'Add a dipstick' })).toBeVisible();
});
