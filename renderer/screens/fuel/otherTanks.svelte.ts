import type { GaugeReading } from '../../../shared-calc/fuel/fill-run.ts';
import type { KeptRefits } from '../../../shared-calc/fuel/kept-refits.ts';
import type { CalibrationRecord } from '../../../shared-calc/fuel/records.ts';
import type { FuelState } from './fuelState.svelte.ts';

/** Another tank of the aeroplane with the curve that counts for it. */
export interface AdoptedTank {
  readonly tankId: string;
  readonly name: string;
  readonly calibration: CalibrationRecord;
  readonly refits: KeptRefits | null;
}

const middle: GaugeReading = { at: 'scale', positionRatio: 0.5 };

/** The other tanks' curves, beside the one in hand. Made while a component lives. */
export class OtherTanks {
  readonly #fuel: FuelState;
  #found = $state.raw<readonly AdoptedTank[]>([]);
  /** The other tanks; empty as long as one of them has no curve, since there is then nothing to say of all. */
  readonly all = $derived.by((): readonly AdoptedTank[] =>
    this.#found.length > 0 && this.#found.length === this.#fuel.tanks.length - 1 ? this.#found : [],
  );

  constructor(fuel: FuelState) {
    this.#fuel = fuel;
    // They change only when one is adopted or withdrawn: asked for then, not on each drag.
    $effect(() => {
      const { app, tank, tanks } = fuel;
      if (fuel.calibrations.answer === undefined) return;
      let isOld = false;
      void Promise.all(
        tanks
          .filter(({ id }) => id !== tank?.id)
          .map(async ({ id, name }): Promise<AdoptedTank | null> => {
            const list = await app.client.ask('calibration.list', { tankId: id });
            const calibration = list.find(({ withdrawn }) => !withdrawn);
            if (calibration === undefined) return null;
            const refits = await app.client.ask('calibration.refits', { id: calibration.id });
            return { tankId: id, name, calibration, refits };
          }),
      ).then(
        (found) => {
          if (!isOld) this.#found = found.filter((each) => each !== null);
        },
        () => {
          // A tank that cannot be read has no total; its own screen says why.
          if (!isOld) this.#found = [];
        },
      );
      return () => {
        isOld = true;
      };
    });
  }

  readingOf(tankId: string): GaugeReading {
    return this.#fuel.looked.otherReadings[tankId] ?? middle;
  }

  read(tankId: string, reading: GaugeReading): void {
    const { looked } = this.#fuel;
    looked.otherReadings = { ...looked.otherReadings, [tankId]: reading };
  }
}
