import type { WeighingRecord } from '../../../shared-calc/loading/records.ts';

/** An empty weight of the example aeroplane, 318 kg at 1.776 m. */
export function weighingOf(aircraftId: string): WeighingRecord {
  return {
    id: 'w',
    aircraftId,
    weighedOn: '2026-03-14',
    how: 'scales',
    emptyMassKg: 318,
    emptyArmM: 1.776,
    massSdKg: 0.9,
    armSdM: 0.002,
    unusableFuelIncluded: true,
    oilIncluded: true,
    note: '',
    readings: [],
    withdrawn: false,
  };
}
