import { aircraftFaults, envelopeFaults } from '../../../shared-calc/loading/aircraft-faults.ts';
import { crossingEdges } from '../../../shared-calc/loading/crossing-edges.ts';
import { loadingFaults } from '../../../shared-calc/loading/loading-faults.ts';
import type { RoomRefusals } from './table.ts';

export const refusals: RoomRefusals = {
  functions: [],
  takeNoNumber: [
    [
      aircraftFaults,
      'gives what is wrong as data; each fault is shown in tests/main/requests/aircraft.test.ts',
    ],
    [envelopeFaults, 'gives what is wrong as data; as above'],
    [
      loadingFaults,
      'gives what is wrong as data; each fault is shown in tests/main/requests/loading.test.ts',
    ],
    [crossingEdges, 'compares places only, of whatever unit'],
  ],
};
