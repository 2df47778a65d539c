import type { Bridge } from './bridge.ts';
import { loopbackBridge } from './loopback-bridge.ts';

/** The bridge of whatever this window runs in. */
export function findBridge(): Promise<Bridge> {
  return window.tarewing === undefined ? loopbackBridge() : Promise.resolve(window.tarewing);
}
