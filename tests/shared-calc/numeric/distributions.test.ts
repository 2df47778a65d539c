import fc from 'fast-check';
import { expect, test } from 'vitest';
import { normalCdf, normalQuantile } from '../../../shared-calc/numeric/normal.ts';
import { studentCdf, studentQuantile } from '../../../shared-calc/numeric/student.ts';

function relative(actual: number, expected: number): number {
  return Math.abs(actual - expected) / Math.abs(expected);
}

// Expected figures of this file: SciPy 1.17.1 (special.ndtr, special.ndtri, stats.t), printed to 17 digits.
test.each([
  [-10, 7.61985302416047e-24],
  [-5, 2.866515718791933e-7],
  [-3.0001, 0.0013494549132607172],
  [-3, 0.0013498980316300933],
  [-1.5, 0.06680720126885807],
  [-0.1, 0.460172162722971],
  [0, 0.5],
  [0.3, 0.6179114221889526],
  [1, 0.8413447460685429],
  [2, 0.9772498680518208],
  [3.0001, 0.9986505450867392],
  [8, 0.9999999999999993],
])('a normal quantity lies below %d with the probability that SciPy gives', (z, expected) => {
  // The series loses two digits towards the lower tail, where 0.5 and its sum cancel.
  expect(relative(normalCdf(z), expected)).toBeLessThan(z < -1 ? 1e-13 : 2e-15);
});

test.each([
  [1e-300, -37.0470962993612],
  [1e-20, -9.262340089798409],
  [1e-10, -6.361340902404056],
  [1e-5, -4.264890793922825],
  [0.001, -3.090232306167813],
  [0.05, -1.6448536269514729],
  [0.074, -1.4466320671589785],
  [0.2, -0.8416212335729142],
  [0.7, 0.5244005127080407],
  [0.925, 1.4395314709384563],
  [0.975, 1.959963984540054],
  [0.999, 3.090232306167813],
])('the normal quantile of %d is that of SciPy', (p, expected) => {
  expect(relative(normalQuantile(p), expected)).toBeLessThan(1e-15 * 2);
});

test('the normal quantile and probability undo each other', () => {
  fc.assert(
    fc.property(fc.double({ min: -6, max: 6, noNaN: true }), (z) => {
      // One unit in the last place of p is worth 1e-16 over the density.
      const worth = 4e-16 / Math.exp((-z * z) / 2);
      expect(Math.abs(normalQuantile(normalCdf(z)) - z)).toBeLessThan(worth + 1e-13);
    }),
    { seed: 1 },
  );
});

test.each([
  [-3, 1, 0.10241638234956672],
  [-1, 2, 0.2113248654051871],
  [0.5, 3.7, 0.6773321833400341],
  [1.5, 30, 0.927967035435677],
  [-4, 200, 4.456547609296721e-5],
  [2, 100_000, 0.9772485182712467],
  [-40, 2.5, 7.09781714524669e-5],
])('Student t below %d with %d degrees of freedom has the probability that SciPy gives', (t, n, expected) => {
  // Differences of log-gammas of 50,000 lose eleven units of a double's sixteen digits' last five.
  expect(relative(studentCdf(t, n), expected)).toBeLessThan(n > 1000 ? 1e-10 : 2e-13);
});

test.each([
  [0.975, 1, 12.706204736174694],
  [0.975, 2, 4.302652729749462],
  [0.975, 9, 2.262157162798205],
  [0.95, 4.4, 2.0773632817160532],
  [0.995, 30, 2.7499956535672254],
  [0.01, 3, -4.5407028585681335],
  [0.975, 1000, 1.9623390808264083],
  [1e-6, 5, -24.771029720515948],
  [0.6, 0.5, 0.3979754267847907],
])('the quantile %d of Student t with %d degrees of freedom is that of SciPy', (p, n, expected) => {
  expect(relative(studentQuantile(p, n), expected)).toBeLessThan(1e-11);
});
