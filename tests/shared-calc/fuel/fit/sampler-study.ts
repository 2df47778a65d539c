import { bandOnMark, type VolumeBand } from '../../../../shared-calc/fuel/fit/band.ts';
import { fitGauge } from '../../../../shared-calc/fuel/fit/gauge-fit.ts';
import { bandsOf, type ReferenceTank } from './reference-tanks.ts';
import { sampleBand } from './reference-sampler.ts';

export interface SamplerRow {
  id: string;
  /** Mean distance of the product's three curves from the sampler's, as a share of the sampler's band. */
  productRatio: number;
  /** The same of this sampler from the one in numpy by which the tank's file was made. */
  numpyRatio: number;
}

/** The product's band and the sampler's over one tank, and this sampler against that of the tank's file. */
export function compareWithSampler(tank: ReferenceTank, chainCount: number, stepCount: number): SamplerRow {
  const fit = fitGauge(tank.data);
  if (!fit.enough) throw new Error(`only ${String(fit.distinctCount)} different readings`);
  const product = tank.positions.map((position) => bandOnMark(fit, position));
  const { lowL, bestL, highL } = sampleBand(tank.data, tank.positions, chainCount, stepCount, 5);
  const mine = lowL.map((low, i) => ({ lowL: low, bestL: bestL[i] ?? NaN, highL: highL[i] ?? NaN }));
  return {
    id: tank.id,
    productRatio: distanceRatio(product, mine),
    numpyRatio: distanceRatio(mine, bandsOf(tank.sampled)),
  };
}

/** Mean distance of three curves from a reference, as a share of the reference band's width. */
export function distanceRatio(bands: readonly VolumeBand[], reference: readonly VolumeBand[]): number {
  const sum = bands.reduce((total, band, i) => {
    const to = reference[i];
    if (to === undefined) return NaN;
    const apart =
      Math.abs(band.lowL - to.lowL) + Math.abs(band.bestL - to.bestL) + Math.abs(band.highL - to.highL);
    return total + apart / 3 / (to.highL - to.lowL);
  }, 0);
  return sum / bands.length;
}
