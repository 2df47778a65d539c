import { fuzz } from '../main/weather-import/mutate.ts';

// 20,000 spoilt weather files of all kinds, from fixed seeds: none may crash the reading, hang it or give what cannot be.

const rounds = 20;
const perRound = 1000;
let failed = 0;
for (let round = 1; round <= rounds; round++) {
  const { wrong, readCount, refusedCount, slowestMs } = await fuzz(perRound, round * 7919);
  const bad = wrong.length > 0 || slowestMs > 10_000;
  if (bad) failed++;
  console.log(
    `${bad ? 'not met  ' : 'met      '} ${String(perRound)} files, seed ${String(round * 7919)}: ${String(readCount)} read, ${String(refusedCount)} refused, slowest ${slowestMs.toFixed(0)} ms${bad ? `: ${wrong.slice(0, 3).join('; ')}` : ''}`,
  );
}
console.log(`${String(rounds - failed)} passed, ${String(failed)} failed`);
process.exitCode = failed === 0 ? 0 : 1;
