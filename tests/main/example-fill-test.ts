import type { FillTestRecord, PourRecord } from '../../shared-calc/fuel/records.ts';

/** An invented run into the rear tank of the example aeroplane, five litres a pour, read to the nearest eighth. */
export function exampleFillTest(id = 'may-test', tankId = 'rear'): FillTestRecord {
  const readings: PourRecord['reading'][] = [
    { at: 'emptyStop' },
    { at: 'scale', positionRatio: 1 / 8 },
    { at: 'scale', positionRatio: 3 / 8 },
    { at: 'scale', positionRatio: 1 / 2 },
    { at: 'scale', positionRatio: 5 / 8 },
    { at: 'scale', positionRatio: 7 / 8 },
    { at: 'fullStop' },
    { at: 'fullStop' },
  ];
  return {
    id,
    tankId,
    testedOn: '2026-05-09',
    attitude: 'level flight',
    power: 'battery',
    supplyV: null,
    feeds: null,
    fuelKind: 'unleaded 95',
    fuelTemperatureC: 18,
    scale: { kind: 'fractions', denominator: 8 },
    precautions: ['outdoors', 'bonded'],
    note: '',
    runs: [
      {
        id: `${id}-filling`,
        direction: 'filling',
        start: { from: 'engineFeed' },
        startSdL: null,
        containerId: null,
        endsAt: null,
        pours: readings.map((reading, index) => ({
          id: `${id}-pour-${String(index + 1)}`,
          volumeL: 5,
          reading,
          asideReason: null,
          stickMm: null,
          atEpochS: 1_778_313_600 + index * 300,
          written: null,
        })),
      },
    ],
    pins: [],
    smoothness: null,
  };
}
