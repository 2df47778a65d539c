import { brotliDecompressSync } from 'node:zlib';
import { packedAirports } from './us-airports.ts';

/** A runway as the list has it; null is what the list does not know. */
export interface ListedRunway {
  /** Its number in the list. */
  id: number;
  lengthM: number;
  widthM: number | null;
  surface: string;
  /** Lower and higher numbered end. */
  ends: [ListedEnd, ListedEnd];
  /** Whether the headings are the list's own, or the direction from one end's place to the other's. */
  headingFrom: 'list' | 'ends' | null;
}

export interface ListedEnd {
  ident: string;
  /** Direction of take-off from this end, true. Never from the painted number, which is magnetic and rounded. */
  trueHeadingDeg: number | null;
  displacedThresholdM: number | null;
}

export interface ListedAirport {
  /** Its number in the list. */
  id: number;
  /** null where the list invented one because there is no official one. */
  identifier: string | null;
  name: string;
  municipality: string;
  /** Two letters: 'CO'. */
  state: string;
  latitudeDeg: number;
  longitudeDeg: number;
  elevationM: number | null;
  isOnWater: boolean;
  runways: ListedRunway[];
}

/** Feet to metres, exact (international foot). */
const footM = 0.3048;

interface Line {
  text: string;
  ident: string;
  /** Name and town in upper case, for the search. */
  words: string;
}

let unpacked: readonly Line[] | null = null;

/** Unpacked once, on the first call (some 20 ms); lines are taken apart only where they are found. */
function lines(): readonly Line[] {
  unpacked ??= brotliDecompressSync(Buffer.from(packedAirports, 'base64'))
    .toString('utf8')
    .split('\n')
    .map((text) => {
      const [, ident = '', name = '', municipality = '', state = ''] = text.split('\t', 5);
      return { text, ident, words: `${name} ${municipality} ${state}`.toUpperCase() };
    });
  return unpacked;
}

/**
 * Airports by identifier (the three letters of one whose ICAO code begins with K too), or by words of name, town and
 * state. What begins with the text comes first.
 */
export function findAirports(text: string, most: number): ListedAirport[] {
  const wanted = text.trim().toUpperCase();
  if (wanted === '') return [];
  const words = wanted.split(/\s+/);
  const found: { line: Line; rank: number }[] = [];
  for (const line of lines()) {
    const rank = rankOf(line, wanted, words);
    if (rank < notFound) found.push({ line, rank });
  }
  return found
    .sort((a, b) => a.rank - b.rank || a.line.words.length - b.line.words.length)
    .slice(0, most)
    .map(({ line }) => airportOf(line.text));
}

const notFound = 9;

function rankOf({ ident, words }: Line, wanted: string, parts: readonly string[]): number {
  if (ident === wanted || ident === `K${wanted}`) return 0;
  if (!ident.startsWith('US-') && (ident.startsWith(wanted) || ident.startsWith(`K${wanted}`))) return 1;
  if (words.startsWith(wanted)) return 2;
  if (!parts.every((part) => words.includes(part) || ident.includes(part))) return notFound;
  return parts.every((part) => ` ${words}`.includes(` ${part}`)) ? 3 : 4;
}

function airportOf(line: string): ListedAirport {
  const [
    id,
    ident = '',
    name = '',
    municipality = '',
    state = '',
    latitude,
    longitude,
    elevation,
    water,
    ...runways
  ] = line.split('\t');
  return {
    id: Number(id),
    identifier: ident.startsWith('US-') ? null : ident,
    name,
    municipality,
    state,
    latitudeDeg: Number(latitude),
    longitudeDeg: Number(longitude),
    elevationM: metres(elevation),
    isOnWater: water === 'w',
    runways: runways.map(runwayOf),
  };
}

function runwayOf(text: string): ListedRunway {
  const [
    id,
    length,
    width,
    surface = '',
    low = '',
    high = '',
    heading = '',
    from,
    lowDisplaced,
    highDisplaced,
  ] = text.split('|');
  const headingDeg = heading === '' ? null : Number(heading);
  return {
    id: Number(id),
    lengthM: metres(length) ?? 0,
    widthM: metres(width),
    surface: surfaceInWords(surface),
    ends: [
      { ident: low, trueHeadingDeg: headingDeg, displacedThresholdM: metres(lowDisplaced) },
      {
        ident: high,
        trueHeadingDeg: headingDeg === null ? null : (headingDeg + 180) % 360,
        displacedThresholdM: metres(highDisplaced),
      },
    ],
    headingFrom: from === 'l' ? 'list' : from === 'e' ? 'ends' : null,
  };
}

function metres(feet: string | undefined): number | null {
  return feet === undefined || feet === '' ? null : Number((Number(feet) * footM).toFixed(4));
}

const surfaces: readonly (readonly [RegExp, string])[] = [
  [/^(asp|asph|asphalt|blacktop|bit)\b/i, 'asphalt'],
  [/^(con|conc|concrete)\b/i, 'concrete'],
  [/^pem\b/i, 'part concrete, part asphalt'],
  [/^(turf|torf|tuef|grs|gre|grass|sod|good grass)\b/i, 'grass'],
  [/^(grvl|gvl|grv|gravel)\b/i, 'gravel'],
  [/^(dirt|natural soil|caliche)\b/i, 'earth'],
  [/^(water|wat)\b/i, 'water'],
  [/^(trtd|treated)\b/i, 'treated earth'],
];

/** The list's 219 spellings in words where they are one of the usual ones, as they stand where they are not. */
function surfaceInWords(listed: string): string {
  const [before = ''] = listed.split('-');
  const known = surfaces.find(([pattern]) => pattern.test(before.trim()));
  // Two surfaces in one are left as they stand: which of them a strip is of matters.
  if (known !== undefined && !/[/]|and/i.test(before) && !/-(TURF|GRVL|DIRT|ASPH|CONC)/i.test(listed))
    return known[1];
  return listed === '' ? 'not known' : listed;
}
