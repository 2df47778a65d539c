import { armAtMacPercentM } from '../../../shared-calc/loading/mac.ts';
import { envelopeBands, limitingMomentKgM } from '../../../shared-calc/loading/envelope.ts';
import { InputProblem, RangeProblem } from '../../../shared-calc/problem.ts';
import type { AircraftRecord, WeighingRecord } from '../../../shared-calc/loading/records.ts';

/** One arm on the strip: what lies there, and whether a hand typed it or the program worked it out. */
export interface StripArm {
  id: string;
  name: string;
  armM: number;
  kind: 'wheel' | 'station' | 'tank' | 'empty';
  /** The most that it takes: kg for a station, L for a tank; null where there is no limit. */
  most: number | null;
}

/** Forward and aft limit at one mass, and how far forward the forward one goes at lighter masses. */
export interface StripLimits {
  massKg: number;
  forwardM: number;
  aftM: number;
  foremostM: number;
}

/** Everything with an arm, by its arm from the datum on. */
export function stripArms(aircraft: AircraftRecord, weighing: WeighingRecord | null): StripArm[] {
  const arms: StripArm[] = [];
  const { gear } = aircraft;
  if (gear.noseOrTailArmM !== null)
    arms.push({ id: 'third', name: gear.kind, armM: gear.noseOrTailArmM, kind: 'wheel', most: null });
  if (gear.mainArmM !== null)
    arms.push({ id: 'mains', name: 'main wheels', armM: gear.mainArmM, kind: 'wheel', most: null });
  if (weighing !== null)
    arms.push({ id: 'empty', name: 'empty CG', armM: weighing.emptyArmM, kind: 'empty', most: null });
  for (const { id, name, arm, mostKg } of aircraft.stations) {
    if (arm.kind === 'fixed') arms.push({ id, name, armM: arm.armM, kind: 'station', most: mostKg });
    else {
      arms.push({
        id: `${id}-fore`,
        name: `${name}, foremost`,
        armM: arm.foremostM,
        kind: 'station',
        most: mostKg,
      });
      arms.push({
        id: `${id}-aft`,
        name: `${name}, aftmost`,
        armM: arm.aftmostM,
        kind: 'station',
        most: mostKg,
      });
    }
  }
  for (const { id, name, arm, capacityL } of aircraft.tanks) {
    const armM =
      arm.kind === 'fixed' ? arm.armM : arm.kind === 'armTable' ? (arm.knots.at(-1)?.armM ?? null) : null;
    if (armM !== null) arms.push({ id, name, armM, kind: 'tank', most: capacityL });
  }
  return arms.sort((a, b) => a.armM - b.armM);
}

/** Arms that are the same to a millimetre share a line; their names are joined. */
export function sharedArms(arms: readonly StripArm[]): (StripArm & { names: string[] })[] {
  const shared: (StripArm & { names: string[] })[] = [];
  for (const arm of arms) {
    const same = shared.find((each) => Math.abs(each.armM - arm.armM) < 0.0005 && each.kind === arm.kind);
    if (same === undefined) shared.push({ ...arm, names: [arm.name] });
    else same.names.push(arm.name);
  }
  return shared;
}

/** The limits of the flight's envelope at its highest mass; null while there is none that holds together. */
export function stripLimits(aircraft: AircraftRecord): StripLimits | null {
  const envelope =
    aircraft.envelopes.find(({ phase }) => phase === 'flight') ??
    aircraft.envelopes.find(({ phase }) => phase === 'take-off');
  if (envelope === undefined) return null;
  try {
    const { above, highestKg } = envelopeBands(envelope, aircraft.mac);
    const [span] = above.spans;
    if (span === undefined) return null;
    const atKg = (side: typeof span.forward) => limitingMomentKgM(side, highestKg) / highestKg;
    // An envelope that ends in a point has no width there to be shown.
    if (atKg(span.aft) - atKg(span.forward) < 0.001) return null;
    return {
      massKg: highestKg,
      forwardM: atKg(span.forward),
      aftM: atKg(span.aft),
      foremostM: Math.min(...envelope.vertices.map(({ across, massKg }) => armOf(across, massKg))),
    };
  } catch (error) {
    if (error instanceof InputProblem || error instanceof RangeProblem) return null;
    throw error;
  }

  function armOf(across: number, massKg: number): number {
    if (envelope?.across === 'moment') return across / massKg;
    if (envelope?.across === 'mac' && aircraft.mac !== null) return armAtMacPercentM(across, aircraft.mac);
    return across;
  }
}

/** A label that wants a level of its own: where it stands and how wide it is, in pixels. */
export interface LevelWish {
  xPx: number;
  widthPx: number;
}

/**
 * The lowest level for each label so that it touches none and no stem runs through it. A label stands to the right of
 * its own stem, so the last one along the line chooses first and every label goes above the stems that it spans.
 * @param wishes by rising `xPx`
 */
export function levelsFor(wishes: readonly LevelWish[], airPx: number): number[] {
  const levels = wishes.map(() => 0);
  for (let index = wishes.length - 1; index >= 0; index -= 1) {
    const wish = wishes[index];
    if (wish === undefined) continue;
    const endPx = wish.xPx + wish.widthPx + airPx;
    for (let other = index + 1; other < wishes.length && (wishes[other]?.xPx ?? endPx) < endPx; other += 1)
      levels[index] = Math.max(levels[index] ?? 0, (levels[other] ?? 0) + 1);
  }
  return levels;
}
