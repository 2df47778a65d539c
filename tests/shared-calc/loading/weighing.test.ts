import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { emptyAfterChanges } from '../../../shared-calc/loading/equipment.ts';
import { ballastKg, cgShiftM, massToShiftKg } from '../../../shared-calc/loading/shift.ts';
import { cgFromThirdWheelM, emptyFromScales, fuelAboard } from '../../../shared-calc/loading/weighing.ts';
import { seededNormals } from '../../../shared-calc/numeric/seeded-normals.ts';

const LB = 0.45359237;
const IN = 0.0254;

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('the four formulas of FAA-H-8083-1B chapter 3 (from memory: 2,006 lb, nose wheel 340 lb, wheelbase 78 in)', () => {
  test('nose wheel, datum behind the main wheels by 75 in: CG 88.2 in ahead of the datum', () => {
    // CG = -(D + F L / W) = -(75 + 13.22)
    expect(cgFromThirdWheelM('nose', -75 * IN, 78 * IN, 340 * LB, 2006 * LB) / IN).toBeCloseTo(-88.22, 2);
  });

  test('tail wheel, datum behind the main wheels by 80 in: CG 67.8 in ahead of the datum', () => {
    // CG = -D + R L / W = -80 + 67 x 222 / 1218
    expect(cgFromThirdWheelM('tail', -80 * IN, 222 * IN, 67 * LB, 1218 * LB) / IN).toBeCloseTo(-67.79, 2);
  });

  test('the table of three scales and the formula agree, wherever the datum is', () => {
    fc.assert(
      fc.property(
        between(-5, 5),
        between(0.5, 4),
        between(10, 200),
        between(50, 400),
        (mainsM, baseM, third, main) => {
          for (const [gear, sense] of [
            ['nose', -1],
            ['tail', 1],
          ] as const) {
            const scale = { tareKg: 0, scaleSdKg: 0, armSdM: 0 };
            const table = emptyFromScales([
              { ...scale, name: 'left', scaleKg: main, armM: mainsM },
              { ...scale, name: 'right', scaleKg: main, armM: mainsM },
              { ...scale, name: gear, scaleKg: third, armM: mainsM + sense * baseM },
            ]);
            const formula = cgFromThirdWheelM(gear, mainsM, baseM, third, third + 2 * main);
            expect(Math.abs(table.armM - formula)).toBeLessThan(1e-12);
          }
        },
      ),
      { seed: 1 },
    );
  });
});

describe('a weighing with fuel aboard', () => {
  const scale = { tareKg: 0, scaleSdKg: 0.5, armSdM: 0.003 };
  const readings = [
    { ...scale, name: 'nose', scaleKg: 60, armM: 0.69 },
    { ...scale, name: 'left', scaleKg: 140, armM: 1.985 },
    { ...scale, name: 'right', scaleKg: 142, armM: 1.985 },
  ];

  test('loses the mass and moment of that fuel', () => {
    const weighed = emptyFromScales(readings, [fuelAboard('rear', 30, 0.72, 2.25, 0)]);
    expect(weighed.massKg).toBeCloseTo(342 - 21.6, 12);
    expect(weighed.momentKgM).toBeCloseTo(60 * 0.69 + 282 * 1.985 - 21.6 * 2.25, 12);
  });

  test('carries the uncertainty of scales, arms and fuel: against 200,000 weighings with normal errors', () => {
    const fuel = fuelAboard('rear', 30, 0.72, 2.25, 1);
    const weighed = emptyFromScales(readings, [fuel]);
    const random = seededNormals(20_260_000).normal;
    let [n, sumM, sumA, sumMM, sumAA, sumMA] = [0, 0, 0, 0, 0, 0];
    for (; n < 200_000; n++) {
      let m = -(fuel.massKg + fuel.massSdKg * random());
      let moment = m * fuel.armM;
      for (const r of readings) {
        const kg = r.scaleKg + r.scaleSdKg * random();
        m += kg;
        moment += kg * (r.armM + r.armSdM * random());
      }
      const dm = m - weighed.massKg;
      const da = moment / m - weighed.armM;
      sumM += dm;
      sumA += da;
      sumMM += dm * dm;
      sumAA += da * da;
      sumMA += dm * da;
    }
    const sdM = Math.sqrt(sumMM / n - (sumM / n) ** 2);
    const sdA = Math.sqrt(sumAA / n - (sumA / n) ** 2);
    // 200,000 draws: a standard deviation is known to 0.16 %; five times that.
    expect(Math.abs(weighed.massSdKg / sdM - 1)).toBeLessThan(0.008);
    expect(Math.abs(weighed.armSdM / sdA - 1)).toBeLessThan(0.008);
    expect(Math.abs(weighed.correlation - sumMA / n / (sdM * sdA))).toBeLessThan(0.012);
  });
});

test('shifting a mass keeps the sum and moves the CG just so far', () => {
  fc.assert(
    fc.property(
      between(300, 700),
      between(0, 100),
      between(-3, 3),
      between(-3, 3),
      (totalKg, movedKg, fromM, toM) => {
        const restM = 1.5;
        const before = ((totalKg - movedKg) * restM + movedKg * fromM) / totalKg;
        const after = ((totalKg - movedKg) * restM + movedKg * toM) / totalKg;
        expect(Math.abs(cgShiftM(movedKg, fromM, toM, totalKg) - (after - before))).toBeLessThan(1e-12);
        if (Math.abs(fromM - toM) > 1e-3) {
          expect(Math.abs(massToShiftKg(totalKg, before, after, fromM, toM) - movedKg)).toBeLessThan(1e-7);
        }
      },
    ),
    { seed: 2 },
  );
});

test('ballast at its arm brings the CG to where it was wanted', () => {
  fc.assert(
    fc.property(
      between(200, 700),
      between(1, 2),
      between(1, 2),
      between(3, 6),
      (totalKg, nowM, wantedM, ballastM) => {
        const kg = ballastKg(totalKg, nowM, wantedM, ballastM);
        expect(Math.abs((totalKg * nowM + kg * ballastM) / (totalKg + kg) - wantedM)).toBeLessThan(1e-12);
      },
    ),
    { seed: 3 },
  );
});

describe('equipment changes', () => {
  // FAA-H-8083-1B chapter 4 style, sums by hand: 1,200 lb at 85.5 in; a 10 lb radio out at 30 in; 8 lb in at 90 in.
  const record = emptyAfterChanges({ massKg: 1200, armM: 85.5 }, [
    { kind: 'removed', massKg: 10, armM: 30 },
    { kind: 'added', massKg: 8, armM: 90 },
    { kind: 'moved', massKg: 8, fromArmM: 90, toArmM: 60 },
  ]);

  test('each has its effect on mass and CG', () => {
    expect(record[0]?.massKg).toBe(1190);
    expect(record[0]?.armM).toBeCloseTo((1200 * 85.5 - 300) / 1190, 12);
    expect(record[1]?.armM).toBeCloseTo((1200 * 85.5 - 300 + 720) / 1198, 12);
    expect(record[1]?.changeKg).toBe(8);
    expect(record[2]?.massKg).toBe(1198);
    expect(record[2]?.changeArmM).toBeCloseTo((8 * (60 - 90)) / 1198, 12);
  });
});
