import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isaRatios } from '../../../shared-calc/atmosphere/standard-atmosphere.ts';
import { humidityStep } from '../../../shared-calc/performance/humidity-step.ts';
import { gaggFerrarPowerRatio } from '../../../shared-calc/performance/power.ts';
import { factorChange, PUBLISHED_FACTORS } from '../../../shared-calc/performance/published-factors.ts';
import type { FactorName } from '../../../shared-calc/performance/published-factors.ts';
import { distanceSteps, noteChange } from '../../../shared-calc/performance/runway-distances.ts';
import type { ManualNote } from '../../../shared-calc/performance/runway-distances.ts';
import { estimateTakeOff } from '../../../shared-calc/performance/sea-level-estimate.ts';
import type { SeaLevelFigure, TakeOffEstimate } from '../../../shared-calc/performance/sea-level-estimate.ts';

const START = { groundRollM: 200, overObstacleM: 400 };

describe('the notes of a manual', () => {
  const grass: ManualNote = {
    name: 'dry grass',
    per: { of: 'surface' },
    changeRatio: 0.2,
    shareOf: 'overObstacle',
  };

  test('a share of the whole is added to the ground roll too', () => {
    // The landing table's note of PERF-002: dry grass adds 20 % of the distance over 50 ft to both. By hand: 80 m.
    const [step] = distanceSteps(START, [noteChange(grass, 1, START, 'note 3')]);
    expect(step?.distances).toEqual({ groundRollM: 280, overObstacleM: 480 });
  });

  test('a share of the ground roll is added to both as metres', () => {
    const [step] = distanceSteps(START, [
      noteChange({ ...grass, changeRatio: 0.15, shareOf: 'groundRoll' }, 1, START, 'note'),
    ]);
    expect(step?.distances).toEqual({ groundRollM: 230, overObstacleM: 430 });
  });

  test('each step says what it did, in order', () => {
    const wind: ManualNote = {
      name: 'headwind',
      per: { of: 'headwindMs', amount: 4 },
      changeRatio: -0.1,
      shareOf: 'each',
    };
    const steps = distanceSteps(START, [
      noteChange(wind, 8, START, 'note 1'),
      factorChange('dryGrass', 'takeOff', 1, ['pressureAltitudeM']),
      factorChange('safety', 'takeOff', 1, []),
    ]);
    expect(steps.map((step) => [step.kind, Math.round(step.distances.overObstacleM)])).toEqual([
      ['manualNote', 320],
      ['publishedFactor', 384],
      // 384 x 1.33 = 510.72
      ['safetyFactor', 511],
    ]);
    expect(steps.every((step) => step.source !== '' && step.name !== '')).toBe(true);
  });
});

describe('published factors', () => {
  test.each<[FactorName, number, number, number]>([
    // By hand from the leaflet's rule: whole steps multiply.
    ['weight', 0.2, 1.44, 1.21],
    ['elevation', 609.6, 1.21, 1.1025],
    ['temperature', 20, 1.21, 1.1025],
    ['slope', 0.04, 1.21, 1.21],
    ['tailwind', 0.3, 1.728, 1.728],
    // Half a step half of the way.
    ['weight', 0.05, 1.1, 1.05],
    ['weight', 0, 1, 1],
  ])('%s %d', (name, amount, takeOffRatio, landingRatio) => {
    expect(factorChange(name, 'takeOff', amount, []).factorRatio).toBeCloseTo(takeOffRatio, 12);
    expect(factorChange(name, 'landing', amount, []).factorRatio).toBeCloseTo(landingRatio, 12);
  });

  test('each is refused where the table has that axis', () => {
    expect(() => factorChange('weight', 'takeOff', 0.1, ['massKg'])).toThrow(
      /weight: the table has this axis already/,
    );
    expect(() => factorChange('elevation', 'takeOff', 100, ['pressureAltitudeM'])).toThrow(/axis already/);
    expect(() => factorChange('temperature', 'landing', 5, ['temperatureC'])).toThrow(/axis already/);
    expect(() => factorChange('tailwind', 'landing', 0.1, ['headwindMs'])).toThrow(/axis already/);
    expect(
      factorChange('dryGrass', 'takeOff', 1, ['massKg', 'pressureAltitudeM', 'temperatureC', 'headwindMs'])
        .factorRatio,
    ).toBe(1.2);
  });

  test('more of anything never shortens, and no published factor does', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        (a, b) => {
          const [less, more] = a < b ? [a, b] : [b, a];
          const factor = (amount: number) => factorChange('weight', 'takeOff', amount, []).factorRatio;
          expect(factor(more)).toBeGreaterThanOrEqual(factor(less) - 1e-9);
          // Never less than compounding gives.
          expect(factor(more)).toBeGreaterThanOrEqual(1.2 ** (more / 0.1) - 1e-9);
        },
      ),
    );
    for (const { takeOffRatio, landingRatio } of Object.values(PUBLISHED_FACTORS)) {
      expect(Math.min(takeOffRatio, landingRatio)).toBeGreaterThanOrEqual(1);
    }
  });
});

describe('power against density', () => {
  test.each([
    // S. Gudmundsson, General Aviation Aircraft Design, prints the relation also as 1.132 sigma - 0.132; densities from
    // ICAO Doc 7488 (0.8617, 0.7860 and 0.6292 at 5,000, 8,000 and 15,000 ft). The two forms differ by 0.0005 at most.
    [1, 1],
    [0.8617, 0.8434],
    [0.786, 0.7578],
    [0.6292, 0.5803],
  ])('at a density ratio of %d the power ratio is %d', (sigma, power) => {
    expect(Math.abs(gaggFerrarPowerRatio(sigma) - power)).toBeLessThan(6e-4);
  });
});

describe('the humidity step', () => {
  test('a sultry day: the table is entered warmer, and the engine loses a little more', () => {
    // By hand from WMO-No. 8: e(25) 31.69 hPa x 1.004; Tv = 308.15 / (1 - 0.378 x 0.0318) = 311.9 K = 38.8 degC;
    // dry over moist density 0.980; 1.132 x 0.912 x 0.020 / 0.900 = 2.3 %.
    const { tableTemperatureC, powerLossRatio, change } = humidityStep(1000, 35, 25);
    expect(Math.abs(tableTemperatureC - 38.76)).toBeLessThan(0.05);
    expect(Math.abs(powerLossRatio - 0.023)).toBeLessThan(0.0005);
    expect(Math.abs(change.factorRatio - 1.0235)).toBeLessThan(0.0006);
    expect(change.kind).toBe('estimate');
  });

  test('it never shortens and grows with the dew point', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 600, max: 1080, noNaN: true }),
        fc.double({ min: -10, max: 45, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (pressureHpa, temperatureC, spreadC) => {
          const drier = humidityStep(pressureHpa, temperatureC, temperatureC - spreadC);
          const saturated = humidityStep(pressureHpa, temperatureC, temperatureC);
          expect(drier.change.factorRatio).toBeGreaterThanOrEqual(1);
          expect(drier.tableTemperatureC).toBeGreaterThanOrEqual(temperatureC);
          expect(saturated.powerLossRatio).toBeGreaterThanOrEqual(drier.powerLossRatio - 1e-12);
          expect(saturated.tableTemperatureC).toBeGreaterThanOrEqual(drier.tableTemperatureC - 1e-9);
        },
      ),
    );
  });
});

describe('the estimate from one sea-level figure', () => {
  const FIGURE: SeaLevelFigure = {
    distances: { groundRollM: 160, overObstacleM: 330 },
    massKg: 600,
    liftToDragRatio: 8,
  };
  const whole = (estimate: TakeOffEstimate) =>
    estimate.kind === 'estimate' ? estimate.distances.overObstacleM : NaN;
  const roll = (estimate: TakeOffEstimate) =>
    estimate.kind === 'estimate' ? estimate.distances.groundRollM : NaN;

  test('the figure itself comes back at its own mass and standard sea level', () => {
    const estimate = estimateTakeOff(FIGURE, 600, 1);
    expect(whole(estimate)).toBeCloseTo(330, 9);
    expect(estimate).toMatchObject({ heldAtFigure: false });
  });

  test('ten percent more weight costs at least what the handbook and the leaflet say', () => {
    // PHAK ch. 11: at least 21 % for 10 % of weight. CAA leaflet: 20 %.
    expect(roll(estimateTakeOff(FIGURE, 660, 1)) / 160).toBeGreaterThan(1.21);
    expect(whole(estimateTakeOff(FIGURE, 660, 1)) / 330).toBeGreaterThan(1.2);
  });

  test('altitude costs about what the leaflet says for each 1000 ft', () => {
    // CAA leaflet: 10 % per 1000 ft on the whole distance. A model of one aeroplane may differ by a few points.
    for (const thousandFt of [1, 2, 3, 4]) {
      const { densityRatio } = isaRatios(thousandFt * 304.8);
      const ratio = whole(estimateTakeOff(FIGURE, 600, densityRatio)) / 330;
      expect(Math.abs(ratio ** (1 / thousandFt) - 1.1)).toBeLessThan(0.03);
    }
  });

  test('thicker air and lighter loads gain nothing, and it is said', () => {
    expect(estimateTakeOff(FIGURE, 500, 1.1)).toMatchObject({
      kind: 'estimate',
      heldAtFigure: true,
      distances: { groundRollM: 160, overObstacleM: expect.closeTo(330, 9) as number },
    });
  });

  test('where the climb is lost there is no distance', () => {
    expect(estimateTakeOff(FIGURE, 700, 0.6)).toEqual({ kind: 'wouldNotClimb' });
  });

  test('thinner air and more mass never shorten', () => {
    const sigma = fc.double({ min: 0.75, max: 1.3, noNaN: true });
    const mass = fc.double({ min: 400, max: 640, noNaN: true });
    fc.assert(
      fc.property(sigma, sigma, mass, mass, (s1, s2, m1, m2) => {
        const easy = estimateTakeOff(FIGURE, Math.min(m1, m2), Math.max(s1, s2));
        const hard = estimateTakeOff(FIGURE, Math.max(m1, m2), Math.min(s1, s2));
        if (hard.kind === 'estimate') expect(whole(hard)).toBeGreaterThanOrEqual(whole(easy) - 1e-9);
        if (easy.kind === 'wouldNotClimb') expect(hard.kind).toBe('wouldNotClimb');
      }),
    );
  });
});
