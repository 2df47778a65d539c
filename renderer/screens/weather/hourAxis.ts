/** Room on both sides of every picture over the hours of the day, so that they stand aligned under one another. */
export const HOUR_AXIS_LEFT = 46;
export const HOUR_AXIS_RIGHT = 30;
export const HOUR_TICKS = [0, 3, 6, 9, 12, 15, 18, 21, 24];
