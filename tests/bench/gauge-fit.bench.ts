import type { FillData } from '../../shared-calc/fuel/fit/fill-data.ts';
import { fitGauge, REFIT_COUNT } from '../../shared-calc/fuel/fit/gauge-fit.ts';
import { bandedCurveOf } from '../../shared-calc/fuel/fit/banded-curve.ts';
import { defaultCentre, NewtonFit, straightState } from '../../shared-calc/fuel/fit/newton.ts';
import { beside, machineLine, seeded } from './measure.ts';

// A fill test of 25 pours, fitted with its 400 refits, and its band as it is kept. The plainest other way starts each
// refit from a straight line with as many steps as a mode takes, instead of from the mode with five.
const random = seeded(25);
const data: FillData = {
  capacityL: 50,
  gauge: { resolutionRatio: 1 / 16, stickingSdRatio: 0.005, lagRatio: 0.004, lagSdRatio: 0.003 },
  containers: [{ scaleSdRatio: 0.006, pourSdRatio: 0.012 }],
  runs: [
    {
      direction: 'filling',
      startUsableL: 0,
      startSdL: 0.3,
      rows: Array.from({ length: 25 }, (_, i) => ({
        volumeL: 1.8 + 0.1 * random(),
        container: 0,
        reading: {
          at: 'scale',
          positionRatio: Math.min(15, Math.max(1, Math.round(i * 0.62 + random()))) / 16,
        },
        setAside: false,
      })),
    },
  ],
};

function fitted() {
  const fit = fitGauge(data);
  if (!fit.enough) throw new Error('25 pours are enough');
  return fit;
}
const fit = fitted();
const newton = new NewtonFit(fit.rows);
const modeSteps = 14;

console.log(machineLine());

beside('fuel gauge: fit of 25 pours with 400 refits', 1, () => fitted().refits.count, {
  name: '400 refits alone, each from a straight line',
  run: () => {
    let sumL = 0;
    for (let refit = 0; refit < REFIT_COUNT; refit += 1) {
      const state = straightState(fit.rows);
      const setting = fit.modes[refit % fit.modes.length]?.setting ?? { sigma: 1, stickingSdRatio: 0.005 };
      newton.run(state, fit.rows.nominalL, setting, defaultCentre(data.capacityL), modeSteps);
      sumL += state.curve[0] ?? 0;
    }
    return sumL;
  },
});

beside('fuel gauge: the band at all its places', 1, () => bandedCurveOf(fit, data.capacityL, 0).knots.length);
