import { MS_PER_KT } from '../units/constants.ts';

// Each reader of a group answers undefined for text that is not such a group, so that the report can tell a group that is
// malformed from one that is absent. Missing values inside a good group ("/////KT") are null.

export type WindSpeed = {
  speedMs: number;
  /** P99KT: 100 kt or more (P49MPS: 50 m/s or more); the speed is that bound. */
  atLeast: boolean;
};

export type WindGroup = {
  /** true north; null when calm, variable or missing. North is 360. */
  fromDeg: number | null;
  variable: boolean;
  speed: WindSpeed | null;
  gust: WindSpeed | null;
};

const MS_PER_UNIT: Readonly<Record<string, number>> = { KT: MS_PER_KT, MPS: 1, KMH: 1 / 3.6 };

function speedOf(digits: string | undefined, unit: string): WindSpeed | null {
  const parts = /^(P?)(\d{2,3})$/.exec(digits ?? '');
  if (parts === null) return null;
  const atLeast = parts[1] === 'P';
  // P99 is "more than 99", reported for 100 and above.
  const value = Number(parts[2]) + (atLeast ? 1 : 0);
  return { speedMs: value * (MS_PER_UNIT[unit] ?? NaN), atLeast };
}

/** A speed with its unit alone: "15KT", "P99KT", "04MPS". */
export function readWindSpeed(text: string): WindSpeed | undefined {
  const parts = /^(P?\d{2,3})(KT|MPS|KMH)$/.exec(text);
  return parts === null ? undefined : (speedOf(parts[1], parts[2] ?? '') ?? undefined);
}

/**
 * Wind group: "22015G25KT", "VRB03KT", "00000KT", "090010KT", "24004MPS", "/////KT".
 * @source FMH-1 12.6.5; WMO-No. 306 FM 15, 15.5
 */
export function readWind(text: string): WindGroup | undefined {
  const parts = /^(\d{3}|VRB|\/\/\/)(P?\d{2,3}|\/\/)(?:G(P?\d{2,3}|\/\/))?(KT|MPS|KMH)$/.exec(text);
  if (parts === null) return undefined;
  const [, from = '', mean = '', gusting, unit = ''] = parts;
  const direction = /^\d/.test(from) ? Number(from) : null;
  const speed = speedOf(mean, unit);
  const gust = gusting === undefined ? null : speedOf(gusting, unit);
  if (direction !== null && direction > 360) return undefined;
  if (speed !== null && gust !== null && gust.speedMs < speed.speedMs) return undefined;
  const calm = direction === 0 && speed?.speedMs === 0;
  return { fromDeg: calm ? null : direction === 0 ? 360 : direction, variable: from === 'VRB', speed, gust };
}

export type VariableSector = { fromDeg: number; toDeg: number };

/** Sector in which the direction varies, clockwise: "280V340". @source FMH-1 12.6.5 c; WMO-No. 306 FM 15, 15.5.4 */
export function readVariableSector(text: string): VariableSector | undefined {
  const parts = /^(\d{3})V(\d{3})$/.exec(text);
  if (parts === null) return undefined;
  const [fromDeg, toDeg] = [Number(parts[1]), Number(parts[2])];
  return fromDeg <= 360 && toDeg <= 360 ? { fromDeg, toDeg } : undefined;
}
