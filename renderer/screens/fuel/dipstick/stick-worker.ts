import {
  calibrateStick,
  type StickCalibration,
} from '../../../../shared-calc/fuel/dipstick/calibrate-stick.ts';
import type { DipstickRecord } from '../../../../shared-calc/fuel/dipstick/dipstick-record.ts';
import type { ContainerRecord, FillTestRecord } from '../../../../shared-calc/fuel/records.ts';

/** Fill tests to be fitted by their stick readings, beside the window. */
export interface StickJob {
  readonly key: string;
  readonly tests: readonly FillTestRecord[];
  readonly containers: readonly ContainerRecord[];
  readonly tank: { readonly capacityL: number; readonly unusableL: number };
  readonly stick: DipstickRecord;
}

export interface StickReply {
  readonly key: string;
  readonly found: StickCalibration;
}

addEventListener('message', ({ data }: MessageEvent<StickJob>) => {
  const { key, tests, containers, tank, stick } = data;
  postMessage({ key, found: calibrateStick(tests, containers, tank, stick) } satisfies StickReply);
});
