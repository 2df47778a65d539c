import type { Area } from '../../main/requests/define.ts';

/** Counts, per area of the library, how often it changed: what reads a count is asked again when it grows. */
export class Touched {
  #counts = $state<Partial<Record<Area, number>>>({});

  note(areas: readonly Area[]): void {
    for (const area of areas) this.#counts[area] = (this.#counts[area] ?? 0) + 1;
  }

  /** One figure that changes whenever one of the areas does; another library touches everything. */
  sum(areas: readonly Area[]): number {
    return [...areas, 'library' as const].reduce((sum, area) => sum + (this.#counts[area] ?? 0), 0);
  }
}
