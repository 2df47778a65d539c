import { spawn, spawnSync } from 'node:child_process';
import { createInterface } from 'node:readline';
import {
  densityAltitudeFromSettingInto,
  densityAltitudeInto,
} from '../../shared-calc/atmosphere/density-altitude-into.ts';
import { densityAltitudeM } from '../../shared-calc/atmosphere/density-altitude.ts';
import { stationPressureHpa } from '../../shared-calc/atmosphere/station-pressure.ts';
import { beside, machineLine, report, seeded, spreadOf } from './measure.ts';

// Exact moist density altitude of a million observations: three powers and an exponential each.
const N = 1_000_000;
const ELEVATION_M = 1655;
const random = seeded(4);
const settingHpa = Float64Array.from({ length: N }, () => 990 + 50 * random());
const temperatureC = Float64Array.from({ length: N }, () => -10 + 50 * random());
const dewPointC = temperatureC.map((t) => Math.max(-40, t - 20 * random()));
const pressureHpa = settingHpa.map((q) => stationPressureHpa(q, ELEVATION_M));
const outM = new Float64Array(N);

console.log(machineLine());

function plain(): Float64Array {
  for (let i = 0; i < N; i += 1) {
    const p = stationPressureHpa(settingHpa[i] ?? NaN, ELEVATION_M);
    outM[i] = densityAltitudeM(p, temperatureC[i] ?? NaN, dewPointC[i] ?? NaN);
  }
  return outM;
}

beside(
  'density altitude of a million observations, from altimeter settings',
  N,
  () => {
    densityAltitudeFromSettingInto(outM, settingHpa, temperatureC, dewPointC, ELEVATION_M);
    return outM;
  },
  { name: 'the exact function row by row', run: plain },
);
beside('density altitude of a million observations, from station pressures', N, () => {
  densityAltitudeInto(outM, pressureHpa, temperatureC, dewPointC);
  return outM;
});

let worstM = 0;
densityAltitudeFromSettingInto(outM, settingHpa, temperatureC, dewPointC, ELEVATION_M);
const quick = outM.slice();
plain().forEach((exact, i) => {
  worstM = Math.max(worstM, Math.abs(exact - (quick[i] ?? NaN)));
});
report(`largest difference from the exact function: ${(worstM * 1000).toFixed(2)} mm`, {
  name: 'density altitude, largest difference',
  value: worstM * 1000,
  unit: 'mm',
  n: N,
});

// The same in plain numpy expressions, on the same machine, turn by turn with ours.
const PYTHON = `
import sys, time
import numpy as np
rng = np.random.default_rng(4); n = ${String(N)}
q = rng.uniform(990, 1040, n); t = rng.uniform(-10, 40, n); d = np.maximum(-40, t - rng.uniform(0, 20, n))
for line in sys.stdin:
    begun = time.perf_counter()
    p = 1013.25 * ((q / 1013.25) ** 0.190263 - 0.0065 * ${String(ELEVATION_M)} / 288.15) ** (1 / 0.190263)
    e = (1.0016 + 3.15e-6 * p - 0.074 / p) * 6.112 * np.exp(17.62 * d / (243.12 + d))
    da = 288.15 / 0.0065 * (1 - (p * 100 / (287.05287 * (t + 273.15)) * (1 - 0.37802 * e / p) / 1.225) ** 0.234969)
    print((time.perf_counter() - begun) * 1e3, flush=True)
`;

async function besideNumpy(rounds: number): Promise<void> {
  const python = spawn('python3', ['-c', PYTHON], { stdio: ['pipe', 'pipe', 'inherit'] });
  const lines = createInterface({ input: python.stdout })[Symbol.asyncIterator]();
  const oursMs: number[] = [];
  const numpyMs: number[] = [];
  for (let round = -5; round < rounds; round += 1) {
    const begun = performance.now();
    densityAltitudeFromSettingInto(outM, settingHpa, temperatureC, dewPointC, ELEVATION_M);
    const took = performance.now() - begun;
    python.stdin.write('\n');
    const line = await lines.next();
    if (round < 0) continue;
    oursMs.push(took);
    numpyMs.push(Number(line.value));
  }
  python.stdin.end();
  const ours = spreadOf(oursMs).medianMs;
  const numpy = spreadOf(numpyMs).medianMs;
  report(`beside plain numpy: ${ours.toFixed(1)} ms against ${numpy.toFixed(1)} ms, medians`, {
    name: 'density altitude of a million observations, beside numpy',
    value: ours,
    unit: 'ms',
    against: 'numpy, plain expressions',
    ratio: ours / numpy,
    n: N,
  });
}

if (spawnSync('python3', ['-c', 'import numpy'], { stdio: 'ignore' }).status === 0) await besideNumpy(31);
else console.log('numpy is not at hand: the comparison with it is skipped');
