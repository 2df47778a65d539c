import type { InputOf } from '../../../main/requests/table.ts';
import type { AircraftRecord } from '../../../shared-calc/loading/records.ts';

/** An empty aeroplane with empty tanks, the aeroplane's own figures for flow, taxi and reserve. */
export function newLoading(aircraft: AircraftRecord, name: string): InputOf<'loading.put'>['loading'] {
  const { performance, tanks, envelopes } = aircraft;
  // Wing tanks emptied one after the other would part left from right; the pilot changes the order where it is so.
  const hasBothWings =
    tanks.some(({ side }) => side === 'left') && tanks.some(({ side }) => side === 'right');
  return {
    aircraftId: aircraft.id,
    name,
    category: envelopes.find(({ category }) => category !== '')?.category ?? '',
    items: [],
    fuel: tanks.map(({ id }) => ({ tankId: id, lowL: 0, bestL: 0, highL: 0 })),
    burn: {
      kind: hasBothWings ? 'together' : 'sequence',
      tankIds: tanks.map(({ id }) => id),
      everyMin: null,
      returnLine: null,
    },
    flight: {
      taxiL: performance.taxiFuelL,
      climbL: 0,
      climbMin: 0,
      cruiseLPerH: performance.fuelFlowLPerH ?? 0,
      landingAfterS: null,
      reserveMin: performance.legalReserveMin + performance.ownReserveMin,
    },
  };
}
