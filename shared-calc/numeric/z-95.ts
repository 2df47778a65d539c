/** Standard normal distance of the 5 and 95 % figures from the best one. */
export const Z_95 = 1.6448536269514729;
