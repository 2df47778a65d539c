import type { PlaceInFile, Seen } from './reader.ts';

const mostPlaces = 200;

/** A place and in how many rows it stood. */
export interface PlaceSeen {
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
  readonly #places: PlaceSeen[] = [];
  #name: string | null = null;
  /** The place of the row before; null where that had none that is counted. */
  #last: PlaceSeen | null = null;

  /** @param elevationM NaN where not given. A place of 0, 0 or out of range is none. */
  add(latitudeDeg: number, longitudeDeg: number, elevationM: number): void {
    this.#last = null;
    if (!(Math.abs(latitudeDeg) <= 90 && Math.abs(longitudeDeg) <= 180)) return;
    if (latitudeDeg === 0 && longitudeDeg === 0) return;
    const known = elevationM >= -500 && elevationM <= 6000 ? elevationM : null;
    let place = this.#known(latitudeDeg, longitudeDeg, known);
    if (place === undefined) {
      // A garbled file could name a new place in each row.
      if (this.#places.length === mostPlaces) return;
      place = { latitudeDeg, longitudeDeg, elevationM: known, rowCount: 0 };
      this.#places.push(place);
    }
    place.rowCount++;
    this.#last = place;
  }

  /** A row that gives the very place of the row before. */
  addAgain(): void {
    if (this.#last !== null) this.#last.rowCount++;
  }

  /** The same from cells as printed; an empty one is none. */
  addTexts(latitude: string, longitude: string, elevation: string): void {
    this.add(degrees(latitude), degrees(longitude), degrees(elevation));
  }

  /** The name that the file gives, where it gives one. */
  named(name: string): void {
    this.#name ??= name.trim() === '' ? null : name.trim();
  }

  list(): PlaceSeen[] {
    return [...this.#places];
  }

  /** Whether those seen in the next stretch can be added without reaching the end of the list. */
  canTake({ places }: Seen): boolean {
    const unknown = places.filter((place) => this.#knownAs(place) === undefined);
    return places.length < mostPlaces && this.#places.length + unknown.length <= mostPlaces;
  }

  take({ places }: Seen): void {
    for (const place of places) {
      const known = this.#knownAs(place);
      if (known === undefined) this.#places.push({ ...place });
      else known.rowCount += place.rowCount;
    }
  }

  /** The place of most rows; of equals, the first seen. Null where none was given. */
  most(): PlaceInFile | null {
    let best: PlaceSeen | null = null;
    let placedRowCount = 0;
    for (const place of this.#places) {
      placedRowCount += place.rowCount;
      if (best === null || place.rowCount > best.rowCount) best = place;
    }
    return best === null ? null : { name: this.#name, ...best, placedRowCount };
  }

  #knownAs({ latitudeDeg, longitudeDeg, elevationM }: PlaceSeen): PlaceSeen | undefined {
    return this.#known(latitudeDeg, longitudeDeg, elevationM);
  }

  /** A handful at most, and the same ones row after row: looking through them is quicker than any key. */
  #known(latitudeDeg: number, longitudeDeg: number, elevationM: number | null): PlaceSeen | undefined {
    for (const place of this.#places)
      if (
        place.latitudeDeg === latitudeDeg &&
        place.longitudeDeg === longitudeDeg &&
        place.elevationM === elevationM
      )
        return place;
    return undefined;
  }
}

/** Degrees or metres as printed, NaN for none: Number('') would be 0. */
export function degrees(text: string): number {
  return text.trim() === '' ? NaN : Number(text);
}
