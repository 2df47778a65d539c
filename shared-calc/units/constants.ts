/**
 * Exact conversion constants, for formulas and readers that need the bare factor.
 * @source NIST SP 811 (2008) appendix B; NIST Handbook 44 appendix C. The international pound, foot, inch, mile and knot,
 * both gallons and standard gravity are exact by definition. The conventional inch of mercury is exact by its own
 * definition: 25.4 mm of a liquid of 13 595.1 kg/m3 at 9.80665 m/s2.
 */
export const KG_PER_LB = 0.45359237;
export const M_PER_FT = 0.3048;
export const M_PER_IN = 0.0254;
export const M_PER_NM = 1852;
export const M_PER_SM = 1609.344;
export const L_PER_US_GAL = 3.785411784;
export const L_PER_IMP_GAL = 4.54609;
export const HPA_PER_INHG = 33.86388640341;
export const MS_PER_KT = 1852 / 3600;
export const MS_PER_MPH = 0.44704;
export const MS_PER_FT_MIN = 0.3048 / 60;
export const RAD_PER_DEG = Math.PI / 180;
export const STANDARD_GRAVITY_MS2 = 9.80665;
/** 0 degC in kelvin, exact. */
export const ZERO_CELSIUS_K = 273.15;
