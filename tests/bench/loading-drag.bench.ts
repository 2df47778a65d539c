import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { prepare } from '../../main/hosts/prepare.mjs';
import type { WeighingRecord } from '../../shared-calc/loading/records.ts';
import { busyAircraft, busyRecord } from '../shared-calc/loading/busy-table.ts';
import { weighingOf } from '../shared-calc/wording/example-weighing.ts';
import { fillLibrary } from './bench-library.ts';
import { reportDrag } from './drag-steps.ts';
import { machineLine } from './measure.ts';
import { withOpenedWindow } from './opened-window.ts';

// A grip's step in the real window and a real browser: 12 stations, 4 tanks in doubt, 4 envelopes of eight edges, both
// ellipses. Timed from the event until the answer, the plot and the tables that hang on it are laid out again (the
// painting itself is the browser's). Beside it, in turn, the floor: one word of the page changed and laid out.

prepare((line) => {
  console.log(line);
});
console.log(machineLine());
const folder = mkdtempSync(join(tmpdir(), 'tarewing-bench-'));
const library = join(folder, 'busy.tarewing');
// What a person enters of a weighing: neither its identifier nor whether it was withdrawn.
const weighing: Partial<WeighingRecord> = { ...weighingOf('busy'), emptyMassKg: 330, emptyArmM: 1.8 };
delete weighing.id;
delete weighing.withdrawn;
await fillLibrary(library, [
  ['aircraft.put', { aircraft: busyAircraft() }],
  ['weighing.add', weighing],
  ['loading.put', { loading: busyRecord() }],
]);
try {
  await withOpenedWindow(['--library', library], async ({ page }) => {
    await page.getByRole('link', { name: /^Loading/ }).click();
    await page.getByRole('slider').nth(15).waitFor();
    await page.getByRole('heading', { level: 1, name: /limit/ }).waitFor();
    const grip = 'svg.figure [role=slider]';
    await reportDrag(page, 'loading: one step of a drag, recomputed and laid out', {
      grip,
      sameWay: 1,
      moves: [
        { selector: 'main h1', attribute: null },
        { selector: grip, attribute: 'aria-valuenow' },
      ],
      stuck: 'The step changed nothing.',
    });
  });
} finally {
  rmSync(folder, { recursive: true, force: true });
}
