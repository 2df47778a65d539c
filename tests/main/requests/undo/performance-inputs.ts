import type { PerformanceRecord } from '../../../../shared-calc/performance/records.ts';
import { examplePerformance } from '../../example-performance.ts';
import { someAircraftId } from './aircraft-inputs.ts';
import type { MakeInput } from './change-inputs.ts';
import type { Draw } from './draw.ts';

const edits: ((performance: PerformanceRecord, draw: Draw) => void)[] = [
  (performance, draw) => (performance.printed.distance = draw.pick(['m', 'ft']) ?? 'm'),
  (performance, draw) => {
    const row = draw.pick(performance.takeOff?.rows ?? []);
    if (row !== null) row.overObstacleM = 400 + draw.below(50);
  },
  (performance) => performance.takeOff?.rows.pop(),
  (performance) => performance.takeOff?.notes.pop(),
  (performance, draw) => {
    const row = draw.pick(performance.climb?.rows ?? []);
    if (row !== null) row.asPrinted = draw.chance(0.5);
  },
  (performance) => (performance.landing = null),
  (performance, draw) => {
    performance.takeOff = null;
    performance.seaLevel = {
      groundRollM: 150 + draw.below(50),
      overObstacleM: 330,
      massKg: 600,
      safety: { factorRatio: 1.5, source: "the pilot's own" },
      readingSdRatio: 0.1,
      source: { from: 'manual', comparedOn: '2026-04-02' },
    };
  },
  (performance, draw) => (performance.wind.ownCrosswindMs = draw.pick([null, 5, 6])),
];

export const performanceInputs = {
  'performance.put': async (library, draw) => {
    const aircraftId = await someAircraftId(library, draw);
    if (aircraftId === null) return null;
    const kept = (await library.ask('performance.get', { aircraftId })) as PerformanceRecord;
    const performance = draw.chance(0.4) ? examplePerformance(aircraftId) : kept;
    for (let count = draw.below(3); count > 0; count--) draw.pick(edits)?.(performance, draw);
    return draw.chance(0.3) ? { performance, named: `tables ${draw.word()}` } : { performance };
  },
} satisfies Record<string, MakeInput>;
