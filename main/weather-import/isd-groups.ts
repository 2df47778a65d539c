import { fiveDigits, fourDigits } from './words.ts';

// The groups of the additional section of the Integrated Surface Data that are read: MA1 (pressures), OC1 (gust).

/** Where the two groups begin, -1 where they do not, and their figures as they stand there. */
export interface Groups {
  pressureAt: number;
  setting: number;
  stationPressure: number;
  gustAt: number;
  gust: number;
}

export function noGroups(): Groups {
  return { pressureAt: -1, setting: 0, stationPressure: 0, gustAt: -1, gust: 0 };
}

const digit1 = 0x31;
const letterA = 0x41;
const letterC = 0x43;
const letterD = 0x44;
const letterE = 0x45;
const letterM = 0x4d;
const letterO = 0x4f;
const letterQ = 0x51;
const letterR = 0x52;

/**
 * Find MA1 and OC1. Free text behind REM and the edits behind EQD can hold any letters, so the search ends there. What
 * looks like a group but has no figures is part of another.
 */
export function findGroups(view: DataView, from: number, to: number, into: Groups): void {
  into.pressureAt = -1;
  into.gustAt = -1;
  let at = from;
  for (; at + 16 <= to; at += 16) {
    const a = marked(view.getInt32(at, true));
    const b = marked(view.getInt32(at + 4, true));
    const c = marked(view.getInt32(at + 8, true));
    const d = marked(view.getInt32(at + 12, true));
    if ((a | b | c | d) === 0) continue;
    if (a !== 0 && endsAt(view, from, at, a, to, into)) return;
    if (b !== 0 && endsAt(view, from, at + 4, b, to, into)) return;
    if (c !== 0 && endsAt(view, from, at + 8, c, to, into)) return;
    if (d !== 0 && endsAt(view, from, at + 12, d, to, into)) return;
  }
  for (; at + 4 <= to; at += 4) if (endsAt(view, from, at, marked(view.getInt32(at, true)), to, into)) return;
  for (; at < to; at++) if (endsAt(view, from, at, marked(view.getUint8(at)), to, into)) return;
}

/**
 * Each of MA1, OC1, REM and EQD has an M, O or Q in it, and little else has: the upper bit of a byte is set where it is
 * one of them. A byte above such a one may have it set too, so each is looked at.
 */
function marked(word: number): number {
  // M and O differ in one bit; what becomes zero was the letter.
  const likeO = (word | 0x02020202) ^ 0x4f4f4f4f;
  const likeQ = word ^ 0x51515151;
  return (((likeO - 0x01010101) & ~likeO) | ((likeQ - 0x01010101) & ~likeQ)) & 0x80808080;
}

/** Look at the marked bytes of a word of the section that begins at `from`; true where its groups are over. */
function endsAt(
  view: DataView,
  from: number,
  wordAt: number,
  marks: number,
  to: number,
  into: Groups,
): boolean {
  for (let left = marks; left !== 0; left &= left - 1) {
    const at = wordAt + ((31 - Math.clz32(left & -left)) >> 3);
    if (at >= to) return false;
    const letter = view.getUint8(at);
    if (letter === letterM) {
      if (at - 2 >= from && view.getUint8(at - 2) === letterR && view.getUint8(at - 1) === letterE)
        return true;
      if (into.pressureAt < 0 && at + 15 <= to && isGroup(view, at, letterA)) readPressures(view, at, into);
    } else if (letter === letterO) {
      if (into.gustAt < 0 && at + 8 <= to && isGroup(view, at, letterC)) readGust(view, at, into);
    } else if (letter === letterQ && at - 1 >= from && at + 1 < to)
      if (view.getUint8(at - 1) === letterE && view.getUint8(at + 1) === letterD) return true;
  }
  return false;
}

function isGroup(view: DataView, at: number, second: number): boolean {
  return view.getUint8(at + 1) === second && view.getUint8(at + 2) === digit1;
}

function readPressures(view: DataView, at: number, into: Groups): void {
  into.setting = fiveDigits(view, at + 3);
  into.stationPressure = fiveDigits(view, at + 9);
  if (into.setting >= 0 && into.stationPressure >= 0) into.pressureAt = at;
}

function readGust(view: DataView, at: number, into: Groups): void {
  into.gust = fourDigits(view, at + 3);
  if (into.gust >= 0) into.gustAt = at;
}
