import { beforeEach, expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import { render } from 'vitest-browser-svelte';
import App from '../../../../renderer/app/App.svelte';
import { showAppearance } from '../../../../renderer/app/appearance.ts';
import { makeClient } from '../../../../renderer/app/client.ts';
import { sheets } from '../../../../renderer/app/sheets.svelte.ts';
import { partsBridge } from '../../../../renderer/ui/parts/partsBridge.ts';
import type { AircraftRecord, LoadingRecord } from '../../../../shared-calc/loading/records.ts';
import { exampleAircraft, exampleLoading, examplePerson } from '../../../main/example-aircraft.ts';
import { weighingOf } from '../../../shared-calc/wording/example-weighing.ts';
import '../../../../renderer/ui/tokens.css';
import '../../../../renderer/ui/base.css';
import '../../../../renderer/plot/plot.css';

/** The example aeroplane with so many places, each with 8 kg, over a metre of arm. */
function withStations(count: number): { aircraft: AircraftRecord; loading: LoadingRecord } {
  const aircraft = exampleAircraft();
  const loading = exampleLoading();
  const [pattern] = aircraft.stations;
  if (pattern === undefined) throw new Error('the example has a station');
  aircraft.groups = [];
  aircraft.stations = Array.from({ length: count }, (_, i) => ({
    ...pattern,
    id: `place-${String(i)}`,
    name: `Place ${String(i + 1)}`,
    arm: { kind: 'fixed', armM: 1.6 + i / count },
  }));
  loading.items = aircraft.stations.map(({ id, name }) => ({
    id: `item-${id}`,
    stationId: id,
    seatArmM: null,
    personId: null,
    typed: { name: `Bag of ${name}`, massKg: 8, known: 'weighed', sdKg: 0.3, biasKg: 0 },
  }));
  return { aircraft, loading };
}

async function plotOf({ aircraft, loading }: ReturnType<typeof withStations>) {
  const kept = structuredClone(loading);
  const bridge = partsBridge({
    'aircraft.list': () => ({
      aircraft: [{ id: aircraft.id, name: aircraft.name, identification: '' }],
      currentId: aircraft.id,
    }),
    'aircraft.get': () => ({
      aircraft: structuredClone(aircraft),
      weighings: [weighingOf(aircraft.id)],
      currentWeighingId: 'w',
    }),
    'people.list': () => [{ ...examplePerson('mara', 'Mara', 68), removed: false }],
    'loading.list': () => ({ loadings: [{ id: kept.id, name: kept.name }], currentId: kept.id }),
    'loading.get': () => ({ loading: structuredClone(kept), people: [], removedStations: [] }),
    'loading.records': () => [structuredClone(kept)],
  });
  // Read before the window is shown, as its start does.
  await sheets.fetch('loading');
  const screen = await render(App, {
    client: makeClient(bridge),
    first: {
      status: { libraryPath: '/home/pilot/own.tarewing', isDemo: false, problem: null },
      settings: {},
      screen: 'loading',
    },
  });
  await expect
    .poll(() => document.querySelectorAll('svg.figure [role=slider]').length)
    .toBe(aircraft.stations.length + aircraft.tanks.length);
  return screen;
}

const touches = (a: DOMRect, b: DOMRect) =>
  a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 1 && b.top < a.bottom - 1;

beforeEach(() => {
  showAppearance('light', 100);
});

test.each([4, 12])(
  'with %i stations every load has its grip and its name, and none lies on another',
  async (count) => {
    await plotOf(withStations(count));
    await document.fonts.ready;
    await new Promise((resolve) => setTimeout(resolve, 100));
    const names = [...document.querySelectorAll('svg.figure text.hand')];
    expect(
      names.map(({ textContent }) => textContent).filter((text) => text.startsWith('Bag of')),
    ).toHaveLength(count);
    const boxes = names.map((name) => name.getBoundingClientRect());
    const overlapping = boxes.flatMap((a, i) =>
      boxes
        .slice(i + 1)
        .flatMap((b, j) =>
          touches(a, b) ? [`${names[i]?.textContent ?? ''} on ${names[i + 1 + j]?.textContent ?? ''}`] : [],
        ),
    );
    expect(overlapping).toEqual([]);
    if (count <= 5) return;
    const grips = [...document.querySelectorAll('svg.figure .grip .body')].map((grip) =>
      grip.getBoundingClientRect(),
    );
    expect(grips.flatMap((a, i) => grips.slice(i + 1).filter((b) => touches(a, b)))).toEqual([]);
  },
);

test('the probe says which changes of load lead to the place under the pointer, and arrows move it', async () => {
  const screen = await plotOf(withStations(4));
  const probe = screen.getByRole('application');
  (probe.element() as SVGElement).focus();
  await userEvent.keyboard('{ArrowUp}{ArrowRight}');

  await expect.poll(() => probe.element().getAttribute('aria-label')).toMatch(/kg at .*mm/);
  await expect.poll(() => document.querySelectorAll('.probe line').length).toBe(2);
  expect(document.querySelectorAll('.probe text').length).toBeLessThanOrEqual(3);
  await userEvent.keyboard('{Escape}');
  await expect.poll(() => document.querySelectorAll('.probe line').length).toBe(0);
});
