import { M_PER_FT } from '../units/constants.ts';

export type SkyLayer = {
  amount: 'FEW' | 'SCT' | 'BKN' | 'OVC' | 'VV';
  /** above the field; null where it is "///" */
  baseM: number | null;
};

/** A layer of cloud or the vertical visibility into a surface layer: "BKN022CB", "VV003". @source FMH-1 12.6.9 */
export function readSky(text: string): SkyLayer | undefined {
  const parts = /^(FEW|SCT|BKN|OVC|VV)(\d{3}|\/\/\/)(?:CB|TCU|\/\/\/)?$/.exec(text);
  if (parts === null) return undefined;
  const hundredFeet = parts[2] === '///' ? null : Number(parts[2]);
  return {
    amount: parts[1] as SkyLayer['amount'],
    baseM: hundredFeet === null ? null : hundredFeet * 100 * M_PER_FT,
  };
}

/** Ceiling: the lowest layer that is broken or overcast, or the vertical visibility. @source 14 CFR 1.1, ceiling */
export function ceilingM(layers: readonly SkyLayer[]): number | null {
  const bases = layers.flatMap(({ amount, baseM }) =>
    baseM !== null && amount !== 'FEW' && amount !== 'SCT' ? [baseM] : [],
  );
  return bases.length === 0 ? null : Math.min(...bases);
}
