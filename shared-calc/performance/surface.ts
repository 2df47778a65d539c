import { PUBLISHED_FACTORS } from './published-factors.ts';
import type { RunwayPhase } from './published-factors.ts';

/** What a runway is like today. Gravel has no published factor: it is counted as firm dry grass (common practice, no source). */
export type SurfaceKind = 'paved' | 'wetPaved' | 'gravel' | 'dryGrass' | 'wetGrass' | 'softGround';

/** By the beginning of a word, so that the codes of airport lists (ASPH, CON, GRVL, TURF) are found as well. */
const BEGINNINGS: readonly (readonly [beginnings: RegExp, dry: SurfaceKind, wet: SurfaceKind])[] = [
  [/^(sof|san|sno|mud|ice)/, 'softGround', 'softGround'],
  // Bare earth turns soft when it is wet.
  [/^(dir|ear|soi|cla)/, 'gravel', 'softGround'],
  [/^(gras|grs|tur|sod)/, 'dryGrass', 'wetGrass'],
  [/^(grav|grv|gvl|gre|lat|cor|sha|cal|unp)/, 'gravel', 'gravel'],
  [/^(asp|con|pav|tar|bit|pem|mac)/, 'paved', 'wetPaved'],
];

/**
 * The kind of surface that a runway's description means; null where the words say nothing that is known.
 * @param words as in the list of fields: "asphalt", "Turf", "GRVL", "grass and earth"; the worst part counts
 */
export function surfaceKindOf(words: string): SurfaceKind | null {
  const parts = words.toLowerCase().split(/[^a-z]+/);
  const isWet = parts.includes('wet');
  for (const [beginnings, dry, wet] of BEGINNINGS)
    if (parts.some((part) => beginnings.test(part))) return isWet ? wet : dry;
  return null;
}

/**
 * Published factor of a surface against the one that the figures are printed for; never below 1: a better surface than
 * printed gains nothing.
 * @source UK CAA SafetySense Leaflet 7, through published-factors.ts
 */
export function surfaceFactorRatio(
  surface: SurfaceKind,
  printedFor: 'paved' | 'dryGrass',
  phase: RunwayPhase,
): number {
  return Math.max(1, onPavedRatio(surface, phase) / onPavedRatio(printedFor, phase));
}

function onPavedRatio(surface: SurfaceKind, phase: RunwayPhase): number {
  if (surface === 'paved') return 1;
  const { takeOffRatio, landingRatio } = PUBLISHED_FACTORS[surface === 'gravel' ? 'dryGrass' : surface];
  return phase === 'takeOff' ? takeOffRatio : landingRatio;
}
