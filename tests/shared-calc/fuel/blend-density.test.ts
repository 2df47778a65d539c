import { describe, expect, test } from 'vitest';
import { blendDensity } from '../../../shared-calc/fuel/blend-density.ts';

const gasoline = (ethanolPercent: number) => ({ kind: 'motor gasoline' as const, ethanolPercent });

describe('the density of a fuel by its kind', () => {
  test('motor gasoline lies in the middle of EN 228, its doubt a rectangle from end to end', () => {
    // A testing laboratory's list of the requirements of EN 228: density at 15 degC 720 to 775 kg/m3.
    const { densityKgPerL } = blendDensity(gasoline(0), 15);
    expect(densityKgPerL).toBeCloseTo((0.72 + 0.775) / 2, 12);
    // GUM 4.3.7: half width over the root of three; the thermometer's 1.2 degrees add a little.
    const rectangle = 0.0275 / Math.sqrt(3);
    const { sdKgPerL } = blendDensity(gasoline(0), 15);
    expect(sdKgPerL).toBeGreaterThan(rectangle);
    expect(sdKgPerL).toBeLessThan(rectangle + 0.0001);
    // The fuel itself may hold 10 % of ethanol and keep to the standard.
    expect(blendDensity(gasoline(10), 15)).toEqual(blendDensity(gasoline(0), 15));
  });

  test('aviation gasoline includes both figures that are commonly reckoned with', () => {
    // FAA-H-8083-1B: 6 lb/US gal, 0.719 kg/L; data sheets of its makers from 0.695 kg/L.
    const { densityKgPerL, sdKgPerL } = blendDensity({ kind: 'avgas' }, 15);
    for (const common of [0.695, 0.719])
      expect(Math.abs(common - densityKgPerL)).toBeLessThan(1.6449 * sdKgPerL);
  });

  test('gets denser in the cold and lighter in the heat as published', () => {
    // Aviation gasoline by CAN 2-3, 25-M82: 0.721 kg/L (6.01 lb/US gal) at 15 degC, 0.769 (6.41) at -40 degC. The equations
    // are for gasolines at large, so 0.3 % is the tolerance.
    const own = { kind: 'own' as const, at15KgPerL: 0.721 };
    expect(blendDensity(own, 15).densityKgPerL).toBeCloseTo(0.721, 12);
    expect(Math.abs(blendDensity(own, -40).densityKgPerL / 0.769 - 1)).toBeLessThan(0.003);
    // Table 54B of ASTM D1250-80, from memory: 740 kg/m3 at 25 degC, factor 0.9877.
    expect(
      Math.abs(blendDensity({ kind: 'own', at15KgPerL: 0.74 }, 25).densityKgPerL / 0.74 - 0.9877),
    ).toBeLessThan(5e-5);
  });

  test('ethanol beyond the standard makes it denser, up to neat ethanol', () => {
    // Neat: specific gravity 0.796 at 60 degF (U.S. Department of Energy), water 0.99901 kg/L.
    expect(blendDensity(gasoline(100), 15).densityKgPerL).toBeCloseTo(0.796 * 0.99901, 4);
    const rising = [0, 10, 20, 50, 85, 100].map((percent) => blendDensity(gasoline(percent), 15));
    for (let i = 1; i < rising.length; i++) {
      const [less, more] = [rising[i - 1], rising[i]];
      expect(more?.densityKgPerL).toBeGreaterThanOrEqual(less?.densityKgPerL ?? NaN);
    }
    // E85 is sold at 0.78 to 0.79 kg/L (from memory).
    expect(rising[4]?.densityKgPerL).toBeGreaterThan(0.775);
    expect(rising[4]?.densityKgPerL).toBeLessThan(0.795);
    // A rule of thumb for neat ethanol, from memory: 1.1 parts in a thousand for a degree.
    const warm =
      blendDensity(gasoline(100), 35).densityKgPerL / blendDensity(gasoline(100), 15).densityKgPerL;
    expect(Math.abs(warm - (1 - 0.022))).toBeLessThan(0.001);
  });

  test('without a temperature it is that at 15 degC, less sure by what 20 degrees either way do', () => {
    const own = { kind: 'own' as const, at15KgPerL: 0.74 };
    const unmeasured = blendDensity(own, null);
    expect(unmeasured.densityKgPerL).toBe(0.74);
    const cold = blendDensity(own, -5).densityKgPerL;
    const warm = blendDensity(own, 35).densityKgPerL;
    // The two ends lie 1.73 standard uncertainties away: those of a rectangle.
    expect((cold - warm) / 2 / unmeasured.sdKgPerL).toBeCloseTo(Math.sqrt(3), 1);
    expect(unmeasured.sdKgPerL).toBeGreaterThan(5 * blendDensity(own, 15).sdKgPerL);
  });
});
