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
    // Moments are printed as the product of the two; where that has no name of its own, in kg m or lb in.
    moment: printed.mass === 'lb' ? 'lb in' : printed.arm === 'mm' ? 'kg mm' : 'kg m',
    fuelDensity:
      printed.mass === 'kg' || printed.volume === 'L'
        ? 'kg/L'
        : printed.volume === 'US gal'
          ? 'lb/US gal'
          : 'lb/imp gal',
    fuelFlow: printed.volume === 'L' ? 'L/h' : printed.volume === 'US gal' ? 'US gal/h' : 'imp gal/h',
  };
}
