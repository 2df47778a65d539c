import axe from 'axe-core';
import { userEvent } from 'vitest/browser';
import { beforeEach, expect, test } from 'vitest';
import { render } from 'vitest-browser-svelte';
import App from '../../../../renderer/app/App.svelte';
import { showAppearance } from '../../../../renderer/app/appearance.ts';
import { makeClient } from '../../../../renderer/app/client.ts';
import { partsBridge } from '../../../../renderer/ui/parts/partsBridge.ts';
import type { AircraftRecord, LoadingRecord } from '../../../../shared-calc/loading/records.ts';
import { exampleAircraft, exampleLoading, examplePerson } from '../../../main/example-aircraft.ts';
import { weighingOf } from '../../../shared-calc/wording/example-weighing.ts';
import '../../../../renderer/ui/tokens.css';
import '../../../../renderer/ui/base.css';
import '../../../../renderer/plot/plot.css';

const status = { libraryPath: '/home/pilot/own.tarewing', isDemo: false, problem: null };
const weighing = weighingOf('two-seater');

/** A window over one aeroplane and one loading, kept in memory; each save may be made to wait. */
async function windowOn(place: 'aircraft' | 'loading', aircraft: AircraftRecord, loading: LoadingRecord) {
  const kept = { aircraft: structuredClone(aircraft), loading: structuredClone(loading) };
  const waits: (() => void)[] = [];
  let isSlow = false;
  const bridge = partsBridge({
    'library.backups': () => ({ folder: '/home/pilot/backups', backups: [] }),
    'aircraft.list': () => ({
      aircraft: [{ id: aircraft.id, name: aircraft.name, identification: '' }],
      currentId: aircraft.id,
    }),
    'aircraft.get': () => ({
      aircraft: structuredClone(kept.aircraft),
      weighings: [weighing],
      currentWeighingId: 'w',
    }),
    'aircraft.put': (input) => {
      kept.aircraft = structuredClone((input as { aircraft: AircraftRecord }).aircraft);
      return { id: kept.aircraft.id };
    },
    'people.list': () => [{ ...examplePerson('mara', 'Mara', 68), removed: false }],
    'loading.list': () => ({ loadings: [{ id: loading.id, name: loading.name }], currentId: loading.id }),
    'loading.get': () => ({ loading: structuredClone(kept.loading), people: [], removedStations: [] }),
    'loading.put': (input) => {
      kept.loading = structuredClone((input as { loading: LoadingRecord }).loading);
      return { id: kept.loading.id };
    },
  });
  const answers = bridge.request.bind(bridge);
  bridge.request = async (name, input, call) => {
    if (name === 'aircraft.put' && isSlow) await new Promise<void>((resolve) => waits.push(resolve));
    return answers(name, input, call);
  };
  const screen = await render(App, {
    client: makeClient(bridge),
    first: { status, settings: {}, screen: place },
  });
  return {
    screen,
    bridge,
    kept,
    /** From now on saves wait; `release` lets all that wait go on. */
    slow: (slow: boolean) => {
      isSlow = slow;
    },
    waitingCount: () => waits.length,
    release: () => {
      for (const go of waits.splice(0)) go();
    },
  };
}

beforeEach(() => {
  showAppearance('light', 100);
});

test('what was said about crossing edges stands when an earlier save comes back late', async () => {
  const { screen, slow, release, waitingCount } = await windowOn(
    'aircraft',
    exampleAircraft(),
    exampleLoading(),
  );
  const cell = (name: string) => screen.getByLabelText(name, { exact: true });
  await expect.element(cell('arm of vertex 2, Take-off')).toBeVisible();
  slow(true);
  await cell('arm of vertex 2, Take-off').fill('1770');
  await userEvent.keyboard('{Enter}');
  await expect.poll(waitingCount).toBe(1);
  // Vertex 3 far aft of the aft limit and below it: the edge 3 to 4 crosses the one from 5 to 1.
  await cell('mass of vertex 3, Take-off').fill('380');
  await userEvent.keyboard('{Enter}');
  await expect
    .poll(() => screen.getByRole('alert').element().textContent)
    .toContain('enter the vertices in order around the envelope');
  release();
  await new Promise((resolve) => setTimeout(resolve, 50));
  await expect.element(screen.getByRole('alert')).toBeVisible();
});

test('an envelope that is taken apart to two vertices says that the one before still counts, and gives it back', async () => {
  const { screen, kept } = await windowOn('aircraft', exampleAircraft(), exampleLoading());
  const remove = screen.getByRole('button', { name: 'Remove vertex 1, Take-off' });
  await expect.element(remove).toBeVisible();
  for (let left = 4; left >= 2; left--) {
    await remove.click();
    await expect.element(screen.getByLabelText(`arm of vertex ${String(left)}, Take-off`)).toBeVisible();
    await expect
      .poll(() => screen.getByLabelText(`arm of vertex ${String(left + 1)}, Take-off`).elements().length)
      .toBe(0);
  }
  await expect.poll(() => screen.getByRole('alert').element().textContent).toContain('at least 3 are needed');
  expect(kept.aircraft.envelopes[0]?.vertices).toHaveLength(3);
  await screen.getByRole('button', { name: 'Back to what was saved' }).click();
  await expect.element(screen.getByLabelText('arm of vertex 3, Take-off')).toBeVisible();
});

test('lateral arms and a density by the kind of fuel have names for every reader, and the typed density wins', async () => {
  const aircraft = exampleAircraft();
  aircraft.lateral = { across: 'arm', left: -0.1, right: null, oilArmM: null };
  const { screen, kept } = await windowOn('aircraft', aircraft, exampleLoading());
  await expect.element(screen.getByLabelText('Lateral arm of Left seat', { exact: true })).toBeVisible();
  await screen.getByRole('button', { name: 'Density in Front tank by the kind of fuel' }).click();
  await screen.getByRole('radio', { name: 'motor gasoline' }).click();
  await expect.poll(() => kept.aircraft.tanks[0]?.blend?.kind).toBe('motor gasoline');
  // The middle of 0.720 to 0.775 kg/L of EN 228.
  const density = screen.getByLabelText('Density in Front tank', { exact: true });
  await expect.element(density).toHaveValue('0.7475');
  const { violations } = await axe.run(document.body, {
    runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'],
  });
  expect(violations.map(({ id }) => id)).toEqual([]);
  await density.fill('0.73');
  await userEvent.keyboard('{Enter}');
  await expect.poll(() => kept.aircraft.tanks[0]?.blend).toBeUndefined();
  expect(kept.aircraft.tanks[0]?.densityKgPerL).toBeCloseTo(0.73, 12);
});

test('a figure that is left while it is being saved is saved once', async () => {
  const { screen, bridge, slow, release, waitingCount } = await windowOn(
    'aircraft',
    exampleAircraft(),
    exampleLoading(),
  );
  const field = screen.getByLabelText('Arm of Baggage', { exact: true });
  await expect.element(field).toBeVisible();
  slow(true);
  await field.fill('2600');
  await userEvent.keyboard('{Enter}');
  await userEvent.keyboard('{Tab}');
  await expect.poll(waitingCount).toBe(1);
  release();
  slow(false);
  await new Promise((resolve) => setTimeout(resolve, 100));
  expect(bridge.asked.filter(({ name }) => name === 'aircraft.put')).toHaveLength(1);
});

test.each(['aircraft', 'loading'] as const)(
  '%s has nothing that a reader of the screen stumbles over',
  async (place) => {
    const { screen } = await windowOn(place, exampleAircraft(), exampleLoading());
    await expect
      .poll(() => screen.getByRole('heading', { level: 1 }).element().textContent)
      .toMatch(/318|limit/);
    await new Promise((resolve) => setTimeout(resolve, 200));
    const { violations } = await axe.run(document.body, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'],
    });
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`),
    ).toEqual([]);
  },
);

test('a mass followed keystroke by keystroke changes the answer at once and is saved once', async () => {
  const { screen, bridge, kept } = await windowOn('loading', exampleAircraft(), exampleLoading());
  const field = screen.getByLabelText('Mass of Mara', { exact: true });
  await expect.element(field).toHaveValue('68');
  const heading = screen.getByRole('heading', { level: 1 });
  const before = heading.element().textContent;
  await field.fill('90');
  await expect.poll(() => heading.element().textContent).not.toBe(before);
  expect(bridge.asked.filter(({ name }) => name === 'loading.put')).toHaveLength(0);
  await userEvent.keyboard('{Enter}');
  await expect.poll(() => kept.loading.items[0]?.typed?.massKg).toBe(90);
  expect(bridge.asked.filter(({ name }) => name === 'loading.put')).toHaveLength(1);
});

test('a grip stops at the station’s limit', async () => {
  const { screen, kept } = await windowOn('loading', exampleAircraft(), exampleLoading());
  const grip = screen.getByRole('slider', { name: 'Mara', exact: true });
  await expect.element(grip).toHaveAttribute('aria-valuemax', '110');
  (grip.element() as SVGGElement).focus();
  await userEvent.keyboard('{End}');
  await expect.poll(() => kept.loading.items[0]?.typed?.massKg, { timeout: 3000 }).toBe(110);
});
