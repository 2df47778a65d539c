import type { InputOf, OutputOf } from '../../../main/requests/table.ts';
import type { Quantity } from '../../../shared-calc/units/quantities.ts';

export type ListedAirport = OutputOf<'airports.find'>[number];
export type ListedRunway = ListedAirport['runways'][number];
type FieldInput = InputOf<'fields.put'>['field'];
export type FieldRunway = FieldInput['runways'][number];

/** What the store takes as a runway of an aeroplane. */
const leastLengthM = 30;
const mostLengthM = 8000;
const mostWidthM = 500;

/** The list's runway as one of the field; null while a heading is missing that only a person can give. */
export function fieldRunway(listed: ListedRunway, firstTrueHeadingDeg: number | null): FieldRunway | null {
  const headingDeg = firstTrueHeadingDeg ?? listed.ends[0].trueHeadingDeg;
  if (headingDeg === null || listed.lengthM < leastLengthM || listed.lengthM > mostLengthM) return null;
  const [first, second] = listed.ends;
  const displaced = [first, second].map((end) => end.displacedThresholdM ?? 0);
  // More displaced than there is: the list is wrong about one of the two, so neither is taken.
  const fits = (displaced[0] ?? 0) + (displaced[1] ?? 0) < listed.lengthM;
  const end = (of: 0 | 1, trueHeadingDeg: number) => ({
    ident: listed.ends[of].ident === '' ? (of === 0 ? 'A' : 'B') : listed.ends[of].ident,
    trueHeadingDeg,
    displacedThresholdM: fits ? (displaced[of] ?? 0) : 0,
  });
  return {
    lengthM: listed.lengthM,
    widthM:
      listed.widthM !== null && listed.widthM >= 1 && listed.widthM <= mostWidthM ? listed.widthM : null,
    surface: listed.surface,
    ends: [end(0, headingDeg), end(1, (headingDeg + 180) % 360)],
    listedId: listed.id,
  };
}

/** A field as the list has it. Runways without a true heading, and those on water, wait until a person takes them. */
export function fieldFromList(listed: ListedAirport): Pick<
  FieldInput,
  'name' | 'latitudeDeg' | 'longitudeDeg' | 'runways'
> & {
  identifier: string | null;
  elevationM: number | null;
  listed: ListedAirport;
} {
  return {
    name: listed.name.slice(0, 80),
    identifier: listed.identifier,
    latitudeDeg: listed.latitudeDeg,
    longitudeDeg: listed.longitudeDeg,
    elevationM: listed.elevationM,
    listed,
    runways: listed.runways.flatMap((each) =>
      each.surface === 'water' ? [] : (fieldRunway(each, null) ?? []),
    ),
  };
}

/** Runways of the list that the field does not have. */
export function runwaysLeft(listed: ListedAirport | null, runways: readonly FieldRunway[]): ListedRunway[] {
  const taken = new Set(runways.map(({ listedId }) => listedId));
  return (listed?.runways ?? []).filter(({ id }) => !taken.has(id));
}

export function runwayName({ ends: [first, second] }: { ends: { ident: string }[] }): string {
  return [first?.ident, second?.ident].filter((ident) => ident !== undefined && ident !== '').join('/');
}

/** Where a field's figures are from. */
export interface Origin {
  /** As the list has them. */
  fromList: string[];
  /** Changed by a person, with what the list has. */
  corrected: { what: string; listHas: string }[];
  /** The list has no figure for it. */
  byHand: string[];
}

interface FieldFigures {
  name: string | null;
  identifier?: string | null;
  latitudeDeg: number | null;
  longitudeDeg: number | null;
  elevationM: number | null;
  runways: readonly FieldRunway[];
}

/** Half of the last digit that the list gives: places to 5 decimals, feet and degrees whole. */
const within = { placeDeg: 5e-6, lengthM: 0.05, headingDeg: 0.5 };

/**
 * Compare a field with the list's figures of the day it was taken from it.
 * @param shown a length in the person's unit
 */
export function originOf(
  field: FieldFigures,
  listed: ListedAirport,
  shown: (valueM: number, quantity: Quantity) => string,
): Origin {
  const origin: Origin = { fromList: [], corrected: [], byHand: [] };
  const note = (what: string, listHas: string | null, isSame: boolean) => {
    if (listHas === null) origin.byHand.push(what);
    else if (isSame) origin.fromList.push(what);
    else origin.corrected.push({ what, listHas });
  };
  const near = (a: number | null | undefined, b: number | null, tolerance: number) =>
    a != null && b !== null && Math.abs(a - b) <= tolerance;

  note('name', listed.name, field.name === listed.name.slice(0, 80));
  note('identifier', listed.identifier, (field.identifier ?? null) === listed.identifier);
  note(
    'place',
    `${listed.latitudeDeg.toFixed(4)}, ${listed.longitudeDeg.toFixed(4)}`,
    near(field.latitudeDeg, listed.latitudeDeg, within.placeDeg) &&
      near(field.longitudeDeg, listed.longitudeDeg, within.placeDeg),
  );
  note(
    'elevation',
    listed.elevationM === null ? null : shown(listed.elevationM, 'elevation'),
    near(field.elevationM, listed.elevationM, within.lengthM),
  );
  for (const runway of field.runways) {
    const name = runwayName(runway);
    const own = listed.runways.find(({ id }) => id === runway.listedId);
    if (own === undefined) {
      origin.byHand.push(`runway ${name}`);
      continue;
    }
    note(
      `length of ${name}`,
      shown(own.lengthM, 'distance'),
      near(runway.lengthM, own.lengthM, within.lengthM),
    );
    note(
      `width of ${name}`,
      own.widthM === null || own.widthM > mostWidthM ? null : shown(own.widthM, 'distance'),
      near(runway.widthM, own.widthM, within.lengthM),
    );
    note(`surface of ${name}`, own.surface, runway.surface === own.surface);
    // The list knows no slopes: one that stands there was typed.
    if (runway.slopeRatio != null) origin.byHand.push(`slope of ${name}`);
    const [end, listedEnd] = [runway.ends[0], own.ends[0]];
    note(
      own.headingFrom === 'ends' ? `heading of ${name} (by the places of its ends)` : `heading of ${name}`,
      listedEnd.trueHeadingDeg === null ? null : `${String(listedEnd.trueHeadingDeg)}°`,
      near(end.trueHeadingDeg, listedEnd.trueHeadingDeg, within.headingDeg),
    );
    for (const at of [0, 1] as const) {
      const listedM = own.ends[at].displacedThresholdM;
      const ownM = runway.ends[at].displacedThresholdM ?? 0;
      if (listedM === null && ownM === 0) continue;
      note(
        `displaced threshold of ${runway.ends[at].ident}`,
        listedM === null ? null : shown(listedM, 'distance'),
        near(ownM, listedM, within.lengthM),
      );
    }
  }
  return origin;
}
