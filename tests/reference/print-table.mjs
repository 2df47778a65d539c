// After a full run of the tests: one line a source, how many of its cases ran, and the largest share of a tolerance
// that any of them used. Fails when a published case was not run.
//   node tests/reference/print-table.mjs           print
//   node tests/reference/print-table.mjs --clear   forget the last run's records, before a new one
import { existsSync, readFileSync, readdirSync, rmSync } from 'node:fs';

const folder = new URL('../report/published/', import.meta.url);

if (process.argv.includes('--clear')) {
  rmSync(folder, { recursive: true, force: true });
} else {
  /** @type {{cases: {id: string}[]}} */
  const { cases } = JSON.parse(readFileSync(new URL('./published-checks.json', import.meta.url), 'utf8'));
  const records = (existsSync(folder) ? readdirSync(folder) : [])
    .filter((name) => name.endsWith('.json'))
    .map((name) => JSON.parse(readFileSync(new URL(name, folder), 'utf8')));

  const bySource = new Map();
  for (const record of records) {
    const row = bySource.get(record.source) ?? { cases: 0, failed: 0, share: 0, id: record.id };
    row.cases += 1;
    if (!record.passed) row.failed += 1;
    if (record.share > row.share) Object.assign(row, { share: record.share, id: record.id });
    bySource.set(record.source, row);
  }

  console.log('Published checks: source, cases, largest share of its tolerance used');
  for (const [source, row] of [...bySource].sort(([a], [b]) => a.localeCompare(b))) {
    const share =
      row.share === 0 ? 'exact' : `${row.share < 0.01 ? '<1' : String(Math.round(row.share * 100))} %`;
    const failed = row.failed === 0 ? '' : `  ${String(row.failed)} FAILED`;
    const where = row.share === 0 ? '' : `  (${row.id})`;
    console.log(`  ${shorten(source).padEnd(84)} ${String(row.cases).padStart(3)}  ${share.padStart(5)}${where}${failed}`);
  }
  const ran = new Set(records.map((record) => record.id));
  const missed = cases.map((one) => one.id).filter((id) => !ran.has(id));
  console.log(`  ${String(ran.size)} of ${String(cases.length)} published cases were run.`);
  if (missed.length > 0) {
    console.error(`  Not run: ${missed.join(', ')}`);
    process.exitCode = 1;
  }
}

/** @param {string} text */
function shorten(text) {
  return text.length <= 84 ? text : `${text.slice(0, 81)}...`;
}
