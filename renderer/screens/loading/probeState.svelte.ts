import type { LoadingResult } from '../../../shared-calc/loading/assess.ts';
import { changeablePlaces, type LoadedPlace } from '../../../shared-calc/loading/changeable-places.ts';
import { changesToPoint, type ChangeToPoint } from '../../../shared-calc/loading/changes-to-point.ts';
import { armAtMacPercentM } from '../../../shared-calc/loading/mac.ts';
import type { AircraftRecord } from '../../../shared-calc/loading/records.ts';
import type { Units } from '../../app/units.svelte.ts';
import type { Frame } from '../../plot/frame.ts';
import type { PlotAcross } from './coordinates.ts';

const mostWays = 2;
/** A single change is there when it ends this near to the cross. */
const underPx = 3;

interface Plotted {
  aircraft: Pick<AircraftRecord, 'mac'>;
  result: LoadingResult;
  across: PlotAcross;
}

/** Where the cross stands in the plot, and which change of load or fuel would bring the take-off there, in words. */
export class ProbeState {
  at = $state.raw<{ x: number; y: number } | null>(null);
  readonly #frame: Pick<Frame, 'x' | 'y'>;
  readonly #units: Units;
  readonly #plotted: () => Plotted | null;
  readonly #places: readonly LoadedPlace[] = $derived.by(() => {
    const plotted = this.#plotted();
    return plotted === null ? [] : changeablePlaces(plotted.result);
  });
  /** The place of the cross, then at most two ways. */
  readonly lines: readonly string[] = $derived.by(() => this.#say());

  constructor(frame: Pick<Frame, 'x' | 'y'>, units: Units, plotted: () => Plotted | null) {
    this.#frame = frame;
    this.#units = units;
    this.#plotted = plotted;
  }

  #say(): string[] {
    const plotted = this.#plotted();
    if (this.at === null || plotted === null) return [];
    const { x, y } = this.at;
    const target = this.#pointOf(plotted, x, y);
    if (target === null) return [];
    const head = `${this.#units.shown(target.massKg, 'mass')} at ${this.#units.shown(target.armM, 'arm')}`;
    const { massKg, armM } = plotted.result.takeOff;
    const beside = this.#pointOf(plotted, x + underPx, y + underPx) ?? target;
    const near = {
      massKg: Math.abs(beside.massKg - target.massKg),
      armM: Math.abs(beside.armM - target.armM),
    };
    const ways = changesToPoint({ massKg, armM }, target, this.#places, mostWays, near);
    if (ways.length === 0)
      return [head, 'no load or fuel added, taken or moved', 'at one or two places leads there'];
    const isAlone = ways[0]?.length === 1;
    return [
      `${head} at take-off by ${isAlone ? 'one change' : 'two changes, none alone'}`,
      ...ways.map((way) => this.#words(way)),
    ];
  }

  /** The mass and arm that a place of the plot stands for; null where nothing could weigh so little or lie so far away. */
  #pointOf({ aircraft: { mac }, across }: Plotted, x: number, y: number) {
    const massKg = this.#frame.y.invert(y);
    const value = this.#frame.x.invert(x);
    if (massKg < 1) return null;
    const armM =
      across === 'moment'
        ? value / massKg
        : across === 'mac' && mac !== null
          ? armAtMacPercentM(100 * value, mac)
          : value;
    return Math.abs(armM) > 30 ? null : { massKg, armM };
  }

  #words(way: ChangeToPoint): string {
    return way
      .map(({ name, index, changeKg }) => {
        const densityKgPerL = this.#places[index]?.densityKgPerL ?? null;
        const change =
          densityKgPerL === null
            ? this.#units.shown(changeKg, 'mass', 'change')
            : this.#units.shown(changeKg / densityKgPerL, 'volume', 'change');
        return `${name} ${change}`;
      })
      .join(', ');
  }
}
