import type { Bridge } from './bridge.ts';

/** The bridge of whatever this window runs in. */
export function findBridge(): Promise<Bridge> {
  if (window.tarewing === undefined)
    return Promise.reject(new Error('This page is opened by the program, not by hand.'));
  return Promise.resolve(window.tarewing);
}
