import { expect, test } from 'vitest';
import { fuelByGauge, withGaugeReading } from '../../../shared-calc/loading/fuel-by-gauge.ts';
import { withFuelL } from '../../../shared-calc/loading/alter.ts';
import type { LoadingRecord } from '../../../shared-calc/loading/records.ts';
import { BANDED } from '../fuel/banded-example.ts';

// By hand from the example's three places: 10, 20 and 36 L best, 6, 16 and 32 L to plan on as read to the nearest quarter.
const half = { at: 'scale', positionRatio: 0.5 } as const;

test('a reading brings the figure to plan on, the best estimate and what may be there', () => {
  expect(fuelByGauge(BANDED, half, 48)).toEqual({ lowL: 16, bestL: 20, highL: 24 });
});

test('at a stop the best figure is the middle of what may be there, and nothing is beyond what the tank holds', () => {
  expect(fuelByGauge(BANDED, { at: 'emptyStop' }, 48)).toEqual({ lowL: 0, bestL: 7, highL: 14 });
  expect(fuelByGauge(BANDED, { at: 'fullStop' }, 48)).toEqual({ lowL: 32, bestL: 40, highL: 48 });
  // A tank that was made smaller since.
  expect(fuelByGauge(BANDED, { at: 'fullStop' }, 35)).toEqual({ lowL: 32, bestL: 35, highL: 35 });
});

test('a loading keeps the reading and its curve until litres are typed', () => {
  const tank = { id: 'left', capacityL: 50, unusableL: 2 };
  const copy = {
    fuel: [{ tankId: 'left', lowL: 30, bestL: 30, highL: 30 }],
    burn: { kind: 'sequence', tankIds: [], everyMin: null, returnLine: null },
  } as unknown as LoadingRecord;
  withGaugeReading(copy, tank, half, { id: 'may', curve: BANDED });
  expect(copy.fuel).toEqual([
    { tankId: 'left', lowL: 16, bestL: 20, highL: 24, gauge: { reading: half, calibrationId: 'may' } },
  ]);
  expect(copy.burn.tankIds).toEqual(['left']);
  withFuelL(copy, tank, 21);
  expect(copy.fuel).toEqual([{ tankId: 'left', lowL: 17, bestL: 21, highL: 25 }]);
  // How warm it is was measured in the same tank, whichever way its contents are told.
  copy.fuel = copy.fuel.map((each) => ({ ...each, temperatureC: 4 }));
  withGaugeReading(copy, tank, half, { id: 'may', curve: BANDED });
  withFuelL(copy, tank, 21);
  expect(copy.fuel).toEqual([{ tankId: 'left', lowL: 17, bestL: 21, highL: 25, temperatureC: 4 }]);
});
