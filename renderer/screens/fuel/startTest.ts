import type { FillTestRecord } from '../../../shared-calc/fuel/records.ts';
import { todayHere } from '../../ui/dateKind.ts';
import type { FuelState } from './fuelState.svelte.ts';

/** Begin a fill test of the tank in hand, with the last one's circumstances: gauges and habits rarely change. */
export async function startTest(state: FuelState): Promise<void> {
  const { app, tank, test: last } = state;
  if (tank === null) return;
  const test: Omit<FillTestRecord, 'id'> = {
    tankId: tank.id,
    testedOn: todayHere(),
    attitude: last?.attitude ?? 'level flight',
    power: last?.power ?? 'battery',
    supplyV: null,
    feeds: null,
    fuelKind: tank.fuelKind,
    fuelTemperatureC: null,
    scale: last?.scale ?? { kind: 'fractions', denominator: 8 },
    precautions: [],
    note: '',
    runs: [
      {
        id: crypto.randomUUID(),
        direction: 'filling',
        start: { from: 'engineFeed' },
        startSdL: null,
        containerId: last?.runs[0]?.containerId ?? null,
        endsAt: null,
        pours: [],
      },
    ],
    pins: [],
    smoothness: null,
  };
  const put = await app.change('fillTest.put', { test });
  if (put === null) return;
  state.looked.testId = put.id;
  state.looked.shows = 'test';
  // What was pressed is gone with the sheet before: the hands go on where a test begins.
  for (let frame = 0; frame < MOST_FRAMES; frame++) {
    await new Promise(requestAnimationFrame);
    const begins = document.getElementById('precautions-before');
    if (begins === null) continue;
    begins.focus();
    return;
  }
}

/** The library answers within a few; where it does not, the cursor stays where it is. */
const MOST_FRAMES = 120;
