import { z } from 'zod';

// What a figure of an aeroplane may be at all: wide enough for every example of the handbooks (up to about 3 500 kg
// and arms counted from far ahead of the nose), narrow enough that a wrong unit by a factor of a thousand is refused.
export const id = z
  .string()
  .regex(/^[A-Za-z0-9_-]{1,64}$/, 'an identifier has 1 to 64 letters, digits, hyphens');
export const name = z.string().trim().min(1).max(80);
export const words = z.string().trim().max(500);
/** Completes 'Undo ...' in the window. */
export const named = z.string().trim().min(1).max(120).optional();
export const massKg = z.number().min(0).max(10_000);
export const armM = z.number().min(-30).max(30);
/** Positive to the right. */
export const lateralArmM = z.number().min(-15).max(15);
export const momentKgM = z.number().min(-300_000).max(300_000);
export const macPercent = z.number().min(-100).max(200);
export const volumeL = z.number().min(0).max(3_000);
export const densityKgPerL = z.number().min(0.5).max(1.2);
export const flowLPerH = z.number().min(0).max(1_000);
export const minutes = z.number().min(0).max(1_440);
/** A day in the calendar that exists. */
export const day = z.iso.date();
