import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { prepare } from '../../main/hosts/prepare.mjs';
import { calibrate, fillDataOf } from '../../shared-calc/fuel/fit/calibrate.ts';
import { fitRows } from '../../shared-calc/fuel/fit/fill-data.ts';
import { modesToFollow, quickCurve } from '../../shared-calc/fuel/fit/quick-curve.ts';
import type { FillTestRecord } from '../../shared-calc/fuel/records.ts';
import { exampleAircraft } from '../main/example-aircraft.ts';
import { exampleFillTest } from '../main/example-fill-test.ts';
import { fillLibrary } from './bench-library.ts';
import { reportDrag } from './drag-steps.ts';
import { machineLine, report, seeded, spreadOf } from './measure.ts';
import { withOpenedWindow } from './opened-window.ts';

// A point of a 25-pour test in hand. First from data to the curve by its modes, as the window works it out at each step;
// beside it the whole fit with its band, which follows. Then the same step in the real window and a real browser, from
// the event until the curve has moved and everything that hangs on it is laid out again.
const STEPS = 200;
const tank = { capacityL: 50, unusableL: 1.5 };

/** Twenty-five pours of about 1.8 L into the example's front tank, read to the nearest sixteenth. */
function pours(): FillTestRecord {
  const random = seeded(25);
  const fillTest = exampleFillTest('bench', 'front');
  const [run] = fillTest.runs;
  const [first] = run?.pours ?? [];
  if (run === undefined || first === undefined) throw new Error('the example has a run with pours');
  run.pours = Array.from({ length: 25 }, (_, index) => ({
    ...first,
    id: `pour-${String(index)}`,
    volumeL: Math.round(10 * (1.8 + 0.1 * random())) / 10,
    reading: {
      at: 'scale' as const,
      positionRatio: Math.min(15, Math.max(1, Math.round(index * 0.62 + random()))) / 16,
    },
  }));
  return { ...fillTest, scale: { kind: 'fractions', denominator: 16 } };
}

console.log(machineLine());
const fillTest = pours();
/** The middle pour as a hand moves it: to and fro by up to a litre. */
const moved = (step: number): FillTestRecord => ({
  ...fillTest,
  runs: fillTest.runs.map((run) => ({
    ...run,
    pours: run.pours.map((pour, index) =>
      index === 12 ? { ...pour, volumeL: pour.volumeL + Math.sin(step / 20) } : pour,
    ),
  })),
});
const found = calibrate([fillTest], [], tank);
if (found.kind !== 'curve') throw new Error('25 pours make a curve');
const start = { curve: found.curve, modes: modesToFollow(found.fit.modes) };
const quickMs: number[] = [];
const wholeMs: number[] = [];
for (let step = -20; step < STEPS; step += 1) {
  let begunMs = performance.now();
  const drawn = quickCurve(fitRows(fillDataOf([moved(step)], [], tank)), start);
  const oneMs = performance.now() - begunMs;
  if (drawn.length === 0) throw new Error('no curve was drawn');
  if (step >= 0) quickMs.push(oneMs);
  if (step % 10 !== 0) continue;
  begunMs = performance.now();
  if (calibrate([moved(step)], [], tank).kind !== 'curve') throw new Error('25 pours make a curve');
  if (step >= 0) wholeMs.push(performance.now() - begunMs);
}
const [quick, all] = [spreadOf(quickMs), spreadOf(wholeMs)];
const calcName = 'fuel gauge: one step of a drag, from data to the curve by its modes';
report(
  `${calcName}: median ${quick.medianMs.toFixed(1)} ms, p95 ${quick.p95Ms.toFixed(1)} ms (${String(quick.runs)} steps, ${String(start.modes.length)} modes); the whole fit with its band takes ${all.medianMs.toFixed(0)} ms`,
  {
    name: calcName,
    value: quick.p95Ms,
    unit: 'ms',
    n: quick.runs,
    against: 'the whole fit with its band',
    ratio: quick.medianMs / all.medianMs,
  },
);

prepare((line) => {
  console.log(line);
});
const folder = mkdtempSync(join(tmpdir(), 'tarewing-bench-'));
const library = join(folder, 'fuel.tarewing');
await fillLibrary(library, [
  ['aircraft.put', { aircraft: exampleAircraft() }],
  ['fillTest.put', { test: fillTest }],
]);
try {
  await withOpenedWindow(['--library', library], async ({ page }) => {
    await page.getByRole('link', { name: /^Fuel/ }).click();
    await page.getByLabel('Pour 13, gauge reads').focus();
    await page.getByRole('slider', { name: 'Volume of the pour in hand' }).waitFor();
    await page.getByRole('heading', { level: 1, name: /plan on/ }).waitFor();
    // A step counts only where the best estimate itself has another path within it. Whole fits come back in between, as
    // they do under a hand.
    await reportDrag(page, 'fuel gauge: one step of a drag in the window, curve and points laid out', {
      grip: '[role=slider][aria-label^="Volume of the"]',
      sameWay: 8,
      moves: [{ selector: 'svg.figure path.line', attribute: 'd' }],
      stuck: 'The step did not move the curve.',
    });
  });
} finally {
  rmSync(folder, { recursive: true, force: true });
}
