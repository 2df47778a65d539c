import { UNIT_PRESETS, type PresetName, type UnitPreferences } from '../../shared-calc/units/preferences.ts';
import { QUANTITIES, type Quantity, type UnitOf } from '../../shared-calc/units/quantities.ts';
import type { Question } from '../../shared-calc/units/round-safely.ts';
import { shown, shownFigure, unitSuffix } from '../../shared-calc/units/shown.ts';
import type { Settings } from './settings.svelte.ts';

/** The units in which this person sees and types each quantity. */
export class Units {
  readonly #settings: Settings;
  readonly preferences = $derived.by(() => unitsFrom(this.#settings.get('units')));

  constructor(settings: Settings) {
    this.#settings = settings;
  }

  of<Q extends Quantity>(quantity: Q): UnitOf[Q] {
    return this.preferences[quantity];
  }

  /** A figure with its unit, rounded to the safe side of its question. */
  shown<Q extends Quantity>(valueSi: number, quantity: Q, question: Question = 'plain'): string {
    return shown(valueSi, quantity, this.of(quantity), question);
  }

  /** The same without the unit, for a column whose head names it. */
  figure<Q extends Quantity>(valueSi: number, quantity: Q, question: Question = 'plain'): string {
    return shownFigure(valueSi, quantity, this.of(quantity), question);
  }

  /** The unit as it stands after a figure or at the end of an axis: 'kg', '°C'. */
  label(quantity: Quantity): string {
    return unitSuffix(this.of(quantity)).trim();
  }

  /** The preset that all units follow, or null where they are mixed. */
  get preset(): PresetName | null {
    const names = Object.keys(UNIT_PRESETS) as PresetName[];
    return (
      names.find((name) =>
        quantities.every((quantity) => UNIT_PRESETS[name][quantity] === this.preferences[quantity]),
      ) ?? null
    );
  }

  choose<Q extends Quantity>(quantity: Q, unit: UnitOf[Q]): void {
    const words = QUANTITIES[quantity].words.replace(/^an? /, '');
    void this.#settings.put('units', { ...this.preferences, [quantity]: unit }, `the unit of ${words}`);
  }

  choosePreset(name: PresetName): void {
    void this.#settings.put('units', { ...UNIT_PRESETS[name] }, `units as in the ${name} set`);
  }
}

export const quantities = Object.keys(QUANTITIES) as Quantity[];

/** Read kept preferences; what is missing or unknown (an older or newer library) takes the metric set's unit. */
export function unitsFrom(kept: unknown): UnitPreferences {
  const given = typeof kept === 'object' && kept !== null ? (kept as Record<string, unknown>) : {};
  const chosen = quantities.flatMap((quantity) => {
    const found = QUANTITIES[quantity].units.find(({ unit }) => unit === given[quantity]);
    return found === undefined ? [] : [[quantity, found.unit] as const];
  });
  return { ...UNIT_PRESETS.metric, ...Object.fromEntries(chosen) };
}
