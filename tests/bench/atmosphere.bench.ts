import { indicatedAltitudeM } from '../../shared-calc/altimetry/altimeter-reading.ts';
import {
  densityAltitudeM,
  ruleOfThumbDensityAltitudeM,
} from '../../shared-calc/atmosphere/density-altitude.ts';
import { stationPressureHpa } from '../../shared-calc/atmosphere/station-pressure.ts';
import { beside, machineLine, seeded } from './measure.ts';

// One at a time, as a screen asks during a drag; a million at once is in density-altitude.bench.ts.
const N = 100_000;
const random = seeded(7);
const settings = Float64Array.from({ length: N }, () => 980 + 60 * random());
const temperatures = Float64Array.from({ length: N }, () => 40 * random());

console.log(machineLine());
let sum = 0;
function over(f: (settingHpa: number, temperatureC: number) => number): () => number {
  return () => {
    for (let i = 0; i < N; i += 1) sum += f(settings[i] ?? NaN, temperatures[i] ?? NaN);
    return sum;
  };
}

beside(
  'density altitude, exact and moist',
  N,
  over((p, t) => densityAltitudeM(p, t, t / 2)),
  {
    name: 'the rule of thumb',
    run: over((p, t) => ruleOfThumbDensityAltitudeM(p, t)),
  },
);
beside(
  'station pressure, exact',
  N,
  over((q) => stationPressureHpa(q, 1655)),
  {
    name: 'the setting times the standard ratio',
    run: over((q) => q * (1 - (0.0065 * 1655) / 288.15) ** 5.25588),
  },
);
beside(
  'altimeter reading',
  N,
  over((q) => indicatedAltitudeM(900, q)),
);
