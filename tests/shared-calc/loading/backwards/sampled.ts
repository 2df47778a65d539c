import type { LoadingAeroplane } from '../../../../shared-calc/loading/aeroplane.ts';
import type { LoadingCase } from '../../../../shared-calc/loading/case.ts';
import { marginsBySlice, sampleAfter } from '../oracle.ts';

const SAMPLES = 240;

/**
 * How far inside a flight is, by looking at many places of it the plainest way: m of arm, or kg over a thousand.
 * Knows one convex envelope for the flight, maximum masses for take-off and landing, and most loads of stations.
 */
export function sampledDepth(aeroplane: LoadingAeroplane, loading: LoadingCase): number {
  const [envelope] = aeroplane.envelopes;
  if (envelope === undefined) throw new Error('an envelope is needed');
  const { taxiL, cruiseLPerH, landingAfterS } = loading.flight;
  const totalL = loading.fuel.reduce((sum, { bestL }) => sum + bestL, 0);
  const masses = envelope.vertices.map(({ massKg }) => massKg);
  let depth = Infinity;
  for (let i = 0; i <= SAMPLES; i++) {
    const at = sampleAfter(aeroplane, loading, taxiL + ((totalL - taxiL) * i) / SAMPLES);
    const { forwardM, aftM } = marginsBySlice(envelope, aeroplane, at);
    depth = Math.min(depth, forwardM, aftM, (at.massKg - Math.min(...masses)) / 1000);
    depth = Math.min(depth, (Math.max(...masses) - at.massKg) / 1000);
  }
  const massAfter = (burnedL: number) => sampleAfter(aeroplane, loading, burnedL).massKg;
  const { takeOffKg, landingKg } = aeroplane.maxMasses;
  if (takeOffKg !== null) depth = Math.min(depth, (takeOffKg - massAfter(taxiL)) / 1000);
  if (landingKg !== null) {
    const burnedL = landingAfterS === null ? totalL : taxiL + (landingAfterS / 3600) * cruiseLPerH;
    depth = Math.min(depth, (landingKg - massAfter(burnedL)) / 1000);
  }
  for (const { id, mostKg } of aeroplane.stations) {
    const loads = loading.loads.filter(({ stationId }) => stationId === id);
    if (mostKg !== null)
      depth = Math.min(
        depth,
        (mostKg - loads.reduce((sum, load) => sum + load.massKg + load.biasKg, 0)) / 1000,
      );
  }
  return depth;
}
