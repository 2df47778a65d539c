// `npm test`: plain JavaScript without dependencies, for Node 20 or later, so that it works on a fresh clone.
// Installs, builds, runs every check, and ends with `N passed, N failed` (and `, N skipped`, the reasons above).
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { CannotPrepare, prepare, prepareToInstall, programNode, root } from '../main/hosts/prepare.mjs';

const reportPath = join(root, 'tests', 'report', 'vitest.json');
/** As many static checks at once: each keeps about one core busy. */
const atOnce = 2;

const startedMs = Date.now();
const tally = { passed: 0, failed: 0, skipped: 0 };
/** @type {string[]} */
const failures = [];

if (prepared(() => prepareToInstall(say), 'install')) {
  await staticChecks();
  if (prepared(() => prepare(say), 'build')) {
    count('build', true);
    await publishedTable('--clear');
    await runTests();
    count('published checks', await publishedTable());
  }
}
finish();

/** Type check, lint and format, two at a time. */
async function staticChecks() {
  const bin = (/** @type {string} */ name) => join(root, 'node_modules', ...name.split('/'));
  const waiting = [
    {
      name: 'svelte-check',
      args: [
        bin('svelte-check/bin/svelte-check'),
        '--tsconfig',
        'tsconfig.json',
        '--fail-on-warnings',
        '--output',
        'human',
      ],
    },
    { name: 'lint', args: [bin('eslint/bin/eslint.js'), '.', '--max-warnings', '0'] },
    { name: 'type check', args: [bin('typescript/bin/tsc'), '--noEmit', '-p', 'tsconfig.json'] },
    { name: 'format', args: [bin('prettier/bin/prettier.cjs'), '--check', '.'] },
  ];
  const lane = async () => {
    for (let check = waiting.shift(); check !== undefined; check = waiting.shift()) {
      const begunMs = Date.now();
      const { code, text } = await run(check.args, true);
      if (code !== 0) say(`\n${check.name} failed:\n${text.trim()}\n`);
      count(check.name, code === 0, begunMs);
    }
  };
  await Promise.all(Array.from({ length: atOnce }, lane));
}

/** Every test of every project; Vitest prints failures, its report is counted here. */
async function runTests() {
  mkdirSync(join(root, 'tests', 'report'), { recursive: true });
  rmSync(reportPath, { force: true });
  const begunMs = Date.now();
  const { code } = await run([
    join(root, 'node_modules', 'vitest', 'vitest.mjs'),
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${reportPath}`,
  ]);
  if (!existsSync(reportPath)) {
    count('tests (no report was written)', false, begunMs);
    return;
  }
  /** @type {{testResults: {name: string, status: string, message?: string, assertionResults: {status: string, fullName: string}[]}[]}} */
  const report = JSON.parse(readFileSync(reportPath, 'utf8'));
  const skips = [];
  const failedBefore = tally.failed;
  for (const file of report.testResults) {
    for (const { status, fullName } of file.assertionResults) {
      if (status === 'passed') tally.passed += 1;
      else if (status === 'failed') count(fullName, false);
      else {
        tally.skipped += 1;
        skips.push(fullName);
      }
    }
    // A file that cannot even be read fails without a test that could.
    if (file.status === 'failed' && !file.assertionResults.some(({ status }) => status === 'failed'))
      count(`${file.name}: ${file.message ?? 'failed outside its tests'}`, false);
  }
  if (code !== 0 && tally.failed === failedBefore) count('tests ended with an error outside any test', false);
  if (skips.length > 0)
    say(`\nSkipped, with the reason in the title:\n${skips.map((name) => `  ${name}`).join('\n')}`);
  say(`tests took ${seconds(begunMs)}`);
}

/**
 * The table of published checks: which source, how many cases, how much of the tolerance was used.
 * @param {string[]} flags
 */
async function publishedTable(...flags) {
  const { code } = await run([join(root, 'tests', 'reference', 'print-table.mjs'), ...flags]);
  return code === 0;
}

/**
 * @param {string[]} args a script and its arguments, run by the program's own Node
 * @param {boolean} [isHeldBack] keep what it prints instead of showing it
 * @returns {Promise<{code: number, text: string}>}
 */
function run(args, isHeldBack = false) {
  const node = programNode();
  const child = spawn(node, args, {
    cwd: root,
    stdio: ['ignore', isHeldBack ? 'pipe' : 'inherit', isHeldBack ? 'pipe' : 'inherit'],
    env: { ...process.env, PATH: [join(node, '..'), process.env['PATH']].join(delimiter) },
  });
  let text = '';
  for (const stream of [child.stdout, child.stderr])
    stream?.on('data', (/** @type {Buffer} */ part) => {
      text += part.toString('utf8');
    });
  return new Promise((resolve) => {
    child.once('error', (error) => {
      resolve({ code: 1, text: error.message });
    });
    child.once('close', (code) => {
      resolve({ code: code ?? 1, text });
    });
  });
}

/**
 * @param {() => void} work
 * @param {string} name
 */
function prepared(work, name) {
  try {
    work();
    return true;
  } catch (error) {
    if (!(error instanceof CannotPrepare)) throw error;
    say(error.message);
    count(name, false);
    return false;
  }
}

/**
 * @param {string} name
 * @param {boolean} isPassed
 * @param {number} [begunMs]
 */
function count(name, isPassed, begunMs) {
  if (isPassed) tally.passed += 1;
  else {
    tally.failed += 1;
    failures.push(name);
  }
  if (begunMs !== undefined) say(`${name}: ${isPassed ? 'passed' : 'FAILED'} (${seconds(begunMs)})`);
}

function finish() {
  if (failures.length > 0) say(`\nFailed:\n${failures.map((name) => `  ${name}`).join('\n')}`);
  say(`All of it took ${seconds(startedMs)}.`);
  const skipped = tally.skipped === 0 ? '' : `, ${String(tally.skipped)} skipped`;
  say(`${String(tally.passed)} passed, ${String(tally.failed)} failed${skipped}`);
  process.exitCode = tally.failed === 0 ? 0 : 1;
}

/** @param {number} sinceMs */
function seconds(sinceMs) {
  return `${((Date.now() - sinceMs) / 1000).toFixed(1)} s`;
}

/** @param {string} line */
function say(line) {
  console.log(line);
}
