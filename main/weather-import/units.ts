/** From hundredths of a file's unit to hundredths of ours, or whole degrees of direction. */
export type Convert = (value: number) => number;

export const asIs: Convert = (value) => value;
/** A scaled integer of tenths. */
export const fromTenths: Convert = (value) => Math.round(value / 10);
export const fromFahrenheit: Convert = (value) => Math.round(((value - 3200) * 5) / 9);
export const fromKelvin: Convert = (value) => value - 27_315;
/** Conventional inch of mercury, 33.86389 hPa (NIST SP 811, appendix B). */
export const fromInchOfMercury: Convert = (value) => Math.round(value * 33.863_89);
export const fromPascal: Convert = (value) => Math.round(value / 100);
export const fromKilopascal: Convert = (value) => value * 10;
/** Conventional millimetre of mercury, 1.333224 hPa (NIST SP 811, appendix B). */
export const fromMillimetreOfMercury: Convert = (value) => Math.round(value * 1.333_224);
/** International knot, 1852 m an hour. */
export const fromKnot: Convert = (value) => Math.round((value * 1852) / 3600);
/** Statute mile an hour, 1609.344 m. */
export const fromMilePerHour: Convert = (value) => Math.round((value * 1609.344) / 3600);
export const fromKilometrePerHour: Convert = (value) => Math.round(value / 3.6);
export const toWhole: Convert = (value) => Math.round(value / 100);
