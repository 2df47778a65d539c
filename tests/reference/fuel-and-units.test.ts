import { VFR_DAY_RESERVE_S, VFR_NIGHT_RESERVE_S } from '../../shared-calc/performance/endurance.ts';
import { NIGHT } from '../../shared-calc/sun/night.ts';
import { convert, fromSi, toSi } from '../../shared-calc/units/convert.ts';
import {
  STANDARD_WEIGHT_LB_PER_US_GAL,
  fluidMassKg,
  standardDensityKgL,
} from '../../shared-calc/units/fluid-weight.ts';
import type { Unit } from '../../shared-calc/units/unit-table.ts';
import { alike, inputOf, numbered, publishedChecks, unitOf } from './cases.ts';

publishedChecks('fuel and units', {
  ...alike(numbered('FUEL', 1, 12), (c) => {
    const printed = unitOf(c, 'quantity');
    const from = printed === 'statute mile' ? 'SM' : (printed as Unit);
    return { value: convert(inputOf(c, 'quantity'), from, c.expected['value']?.unit as Unit) };
  }),
  'FUEL-013': (c) => {
    const volumeL = toSi(inputOf(c, 'volume', 'US gal'), 'US gal');
    return { weight: fromSi(fluidMassKg(volumeL, standardDensityKgL('avgas')), 'lb') };
  },
  'FUEL-014': () => {
    const { avgas, oil, water } = STANDARD_WEIGHT_LB_PER_US_GAL;
    return { avgas, oil, water };
  },
  'FUEL-015': () => ({ reserve: fromSi(VFR_DAY_RESERVE_S, 'min') }),
  // 14 CFR 135.209 asks for the same minutes as 91.151.
  'FUEL-016': () => ({
    reserve_day: fromSi(VFR_DAY_RESERVE_S, 'min'),
    reserve_night: fromSi(VFR_NIGHT_RESERVE_S, 'min'),
  }),
  'FUEL-017': () => ({ starts: NIGHT.starts, ends: NIGHT.ends }),
});
