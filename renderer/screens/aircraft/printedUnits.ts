import type { PrintedUnits } from '../../../shared-calc/loading/records.ts';
import type { UnitOf } from '../../../shared-calc/units/quantities.ts';

/** Every unit of the Aircraft sheet: as the aeroplane's manual prints them, so that the two can be compared. */
export interface ManualUnits {
  mass: UnitOf['mass'];
  arm: UnitOf['arm'];
  volume: UnitOf['volume'];
  moment: UnitOf['moment'];
  fuelDensity: UnitOf['fuelDensity'];
  fuelFlow: UnitOf['fuelFlow'];
}

export function manualUnits(printed: PrintedUnits): ManualUnits {
  return {
    mass: printed.mass,
    arm: printed.arm,
    volume: printed.volume,
    moment: momentUnit(printed),
    fuelDensity:
      printed.mass === 'kg' || printed.volume === 'L'
        ? 'kg/L'
        : printed.volume === 'US gal'
          ? 'lb/US gal'
          : 'lb/imp gal',
    fuelFlow: printed.volume === 'L' ? 'L/h' : printed.volume === 'US gal' ? 'US gal/h' : 'imp gal/h',
  };
}

/** Moments are printed as the product of the two (in inches for pounds), whole or divided to save noughts. */
function momentUnit({ mass, arm, momentPer }: PrintedUnits): UnitOf['moment'] {
  const whole = mass === 'lb' ? 'lb in' : arm === 'mm' ? 'kg mm' : arm === 'cm' ? 'kg cm' : 'kg m';
  return momentPer === undefined ? whole : `${whole}/${momentPer}`;
}
