/**
 * A stretch of an axis made shorter or longer around a place that stays where it is, kept inside the full stretch.
 * @param factor less than 1 to look closer
 */
export function zoomedDomain(
  domain: readonly [number, number],
  factor: number,
  around: number,
  full: readonly [number, number],
): [number, number] {
  const span = Math.min(full[1] - full[0], (domain[1] - domain[0]) * factor);
  const share = (around - domain[0]) / (domain[1] - domain[0]);
  const from = Math.min(full[1] - span, Math.max(full[0], around - share * span));
  return [from, from + span];
}

/** Closer than this share of the whole nothing more is to be seen. */
const closest = 1 / 64;

/** What part of a plot is looked at. */
export class Zoom {
  readonly #full: () => { x: readonly [number, number]; y: readonly [number, number] };
  #x = $state.raw<readonly [number, number] | null>(null);
  #y = $state.raw<readonly [number, number] | null>(null);

  /** @param full the whole of both axes; read anew on each use */
  constructor(full: () => { x: readonly [number, number]; y: readonly [number, number] }) {
    this.#full = full;
  }

  get x(): readonly [number, number] {
    return this.#x ?? this.#full().x;
  }

  get y(): readonly [number, number] {
    return this.#y ?? this.#full().y;
  }

  get isZoomed(): boolean {
    return this.#x !== null;
  }

  /** @param around in data; the middle unless told */
  by(factor: number, around?: { x: number; y: number }): void {
    const full = this.#full();
    const [x0, x1] = this.x;
    const [y0, y1] = this.y;
    if (factor < 1 && (x1 - x0) * factor < (full.x[1] - full.x[0]) * closest) return;
    const x = zoomedDomain([x0, x1], factor, around?.x ?? (x0 + x1) / 2, full.x);
    if (x[1] - x[0] >= (full.x[1] - full.x[0]) * (1 - 1e-9)) {
      this.whole();
      return;
    }
    this.#x = x;
    this.#y = zoomedDomain([y0, y1], factor, around?.y ?? (y0 + y1) / 2, full.y);
  }

  /**
   * Follow a wheel that is turned with Ctrl (browsers send two fingers apart as that too); without Ctrl it scrolls.
   * @param around the place under the pointer, in data
   */
  wheel(event: WheelEvent, around: { x: number; y: number }): void {
    if (!event.ctrlKey) return;
    event.preventDefault();
    this.by(Math.exp(event.deltaY / 300), around);
  }

  whole(): void {
    this.#x = null;
    this.#y = null;
  }
}
