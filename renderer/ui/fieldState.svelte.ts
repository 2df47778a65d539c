import type { FieldKind, Way } from './fieldKind.ts';

/** What a field is told by its surroundings; read anew on each use. */
export interface FieldGiven<V> {
  kind: FieldKind<V>;
  value: V | null;
  /** Whether nothing is an answer too. */
  mayBeEmpty: boolean;
  /** Called on each legible keystroke and step, so that a plot can follow. */
  onTry: ((value: V | null) => void) | undefined;
  /** Saves; gives a sentence where the library refuses. */
  onCommit: (value: V | null) => Promise<string | null | undefined> | string | null | undefined;
}

/** A pause after arrow keys that is taken as the end of stepping: one save, one thing to undo. */
const stepRestsMs = 700;
/** How long a saved text stays shown while the saved value comes back from the library. */
const settlesMs = 1500;

/**
 * A field between keystroke and library: what was typed is never lost, a refusal stands until it is mended,
 * Enter and leaving save, Escape takes back.
 */
export class FieldState<V> {
  readonly #given: () => FieldGiven<V>;
  /** What was typed and not saved yet; null at rest. */
  typed = $state<string | null>(null);
  refusal = $state<string | null>(null);
  /** The ways in which a refused text could be meant, each to be taken by a press. */
  ways = $state.raw<readonly Way<V>[]>([]);
  /** Not wrong, but perhaps not meant: one of the ways settles it. */
  isDoubt = $state(false);
  #saving: { typed: string | null; rests: Promise<boolean> } | null = null;
  #settled = $state<{ text: string; from: V | null } | null>(null);
  #stepTimer: ReturnType<typeof setTimeout> | undefined;
  #settleTimer: ReturnType<typeof setTimeout> | undefined;

  constructor(given: () => FieldGiven<V>) {
    this.#given = given;
  }

  get shownAtRest(): string {
    const { kind, value } = this.#given();
    return value === null ? '' : kind.show(value);
  }

  get text(): string {
    if (this.typed !== null) return this.typed;
    if (this.#settled !== null && this.#settled.from === this.#given().value) return this.#settled.text;
    return this.shownAtRest;
  }

  get isUnsaved(): boolean {
    return this.typed !== null;
  }

  /** What was typed is legible and on its way into the library. */
  get isSaving(): boolean {
    return this.#saving !== null;
  }

  /** 'becomes 86.2 kg' while another unit is typed. */
  get becomes(): string | null {
    if (this.typed === null) return null;
    const reading = this.#given().kind.read(this.typed);
    return 'refused' in reading ? null : (reading.becomes ?? null);
  }

  type(text: string): void {
    this.typed = text;
    this.refusal = null;
    const { kind, onTry } = this.#given();
    const reading = kind.read(text);
    if (!('refused' in reading)) onTry?.(reading.value);
  }

  /** @returns whether the kind knows steps */
  step(steps: number): boolean {
    const { kind, value, onTry } = this.#given();
    if (kind.step === undefined) return false;
    const reading = this.typed === null ? { value } : kind.read(this.typed);
    // From an illegible text there is nowhere to step.
    if ('refused' in reading) return true;
    const next = kind.step(reading.value, steps);
    this.typed = kind.show(next);
    this.refusal = null;
    onTry?.(next);
    clearTimeout(this.#stepTimer);
    this.#stepTimer = setTimeout(() => void this.commit(), stepRestsMs);
    return true;
  }

  /** Settle a refused or doubted text by one of its ways. */
  take(way: Way<V>): Promise<boolean> {
    this.typed = this.#given().kind.show(way.value);
    return this.#save(way.value);
  }

  takeBack(): void {
    clearTimeout(this.#stepTimer);
    this.typed = null;
    this.refusal = null;
    const { onTry, value } = this.#given();
    onTry?.(value);
  }

  /** @returns whether the field is at rest afterwards */
  async commit(): Promise<boolean> {
    clearTimeout(this.#stepTimer);
    const typed = this.typed;
    if (typed === null) return this.refusal === null;
    const { kind, mayBeEmpty } = this.#given();
    if (typed.trim() === this.shownAtRest.trim()) {
      this.takeBack();
      return true;
    }
    const reading = kind.read(typed);
    if ('refused' in reading) {
      this.refusal = reading.refused;
      this.ways = reading.ways ?? [];
      this.isDoubt = reading.isDoubt === true;
      return false;
    }
    if (reading.value === null && !mayBeEmpty) {
      this.ways = [];
      this.isDoubt = false;
      this.refusal = 'Something is needed here. Escape brings back what stood here.';
      return false;
    }
    return this.#save(reading.value);
  }

  /** Enter and then leaving the field say the same twice: one save, which both wait for. */
  #save(next: V | null): Promise<boolean> {
    const typed = this.typed;
    if (this.#saving?.typed === typed) return this.#saving.rests;
    const saving = { typed, rests: this.#saveNow(next, typed) };
    this.#saving = saving;
    void saving.rests.finally(() => {
      if (this.#saving === saving) this.#saving = null;
    });
    return saving.rests;
  }

  async #saveNow(next: V | null, typed: string | null): Promise<boolean> {
    const { kind, value, onCommit } = this.#given();
    if (next === value) {
      this.takeBack();
      return true;
    }
    const sentence = (await onCommit(next)) ?? null;
    // More may have been typed while it was saved; that stays.
    if (this.typed !== typed) return sentence === null;
    this.refusal = sentence;
    this.ways = [];
    this.isDoubt = false;
    if (sentence !== null) return false;
    this.#settle(next === null ? '' : kind.show(next), value);
    return true;
  }

  #settle(text: string, from: V | null): void {
    this.typed = null;
    this.#settled = { text, from };
    clearTimeout(this.#settleTimer);
    this.#settleTimer = setTimeout(() => {
      this.#settled = null;
    }, settlesMs);
  }
}
