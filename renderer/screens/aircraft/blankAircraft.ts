import type { InputOf } from '../../../main/requests/table.ts';
import type { UnitPreferences } from '../../../shared-calc/units/preferences.ts';

/** An aeroplane of which nothing is known but its name. Reserve: 30 min by day, 14 CFR 91.151; shown and editable. */
export function blankAircraft(
  name: string,
  units: Pick<UnitPreferences, 'mass' | 'arm' | 'volume'>,
): InputOf<'aircraft.put'>['aircraft'] {
  const source = { from: 'manual', comparedOn: null } as const;
  return {
    name,
    identification: '',
    datumWords: '',
    printed: {
      mass: units.mass,
      // A manual that counts in feet prints them as inches.
      arm: units.arm === 'ft' ? 'in' : units.arm,
      volume: units.volume,
    },
    mac: null,
    gear: { kind: 'nose wheel', noseOrTailArmM: null, mainArmM: null },
    tailEndArmM: null,
    maxMasses: { rampKg: null, takeOffKg: null, landingKg: null, zeroFuelKg: null },
    leftRightMostKg: null,
    oil: null,
    stations: [],
    groups: [],
    tanks: [],
    envelopes: [],
    performance: {
      bestGlideMs: null,
      bestGlideRatio: null,
      fuelFlowLPerH: null,
      taxiFuelL: 0,
      legalReserveMin: 30,
      ownReserveMin: 0,
    },
    limitsSource: { ...source },
    performanceSource: { ...source },
  };
}
