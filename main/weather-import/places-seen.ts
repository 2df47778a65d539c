import type { PlaceInFile } from './reader.ts';

const mostPlaces = 200;

interface Place {
  latitudeDeg: number;
  longitudeDeg: number;
  elevationM: number | null;
  rowCount: number;
}

/**
 * The places that a file's records give to their station, counted. Most give one; over the years it moves by hundreds
 * of metres, a second source has its own elevation, and one year of one station lies a whole degree off.
 */
export class PlacesSeen {
  readonly #places: Place[] = [];
  #name: string | null = null;

  /** @param elevationM NaN where not given. A place of 0, 0 or out of range is none. */
  add(latitudeDeg: number, longitudeDeg: number, elevationM: number): void {
    if (!(Math.abs(latitudeDeg) <= 90 && Math.abs(longitudeDeg) <= 180)) return;
    if (latitudeDeg === 0 && longitudeDeg === 0) return;
    const known = elevationM >= -500 && elevationM <= 6000 ? elevationM : null;
    // A handful at most, and the same ones row after row: looking through them is quicker than any key.
    for (const place of this.#places)
      if (
        place.latitudeDeg === latitudeDeg &&
        place.longitudeDeg === longitudeDeg &&
        place.elevationM === known
      ) {
        place.rowCount++;
        return;
      }
    // A garbled file could name a new place in each row.
    if (this.#places.length < mostPlaces)
      this.#places.push({ latitudeDeg, longitudeDeg, elevationM: known, rowCount: 1 });
  }

  /** The same from cells as printed; an empty one is none. */
  addTexts(latitude: string, longitude: string, elevation: string): void {
    this.add(degrees(latitude), degrees(longitude), degrees(elevation));
  }

  /** The name that the file gives, where it gives one. */
  named(name: string): void {
    this.#name ??= name.trim() === '' ? null : name.trim();
  }

  /** The place of most rows; of equals, the first seen. Null where none was given. */
  most(): PlaceInFile | null {
    let best: Place | null = null;
    let placedRowCount = 0;
    for (const place of this.#places) {
      placedRowCount += place.rowCount;
      if (best === null || place.rowCount > best.rowCount) best = place;
    }
    return best === null ? null : { name: this.#name, ...best, placedRowCount };
  }
}

/** Degrees or metres as printed, NaN for none: Number('') would be 0. */
export function degrees(text: string): number {
  return text.trim() === '' ? NaN : Number(text);
}
