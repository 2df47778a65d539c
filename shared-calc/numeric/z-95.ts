/**
 * Standard normal distance of the 5 and 95 % figures from the best one: nine times in ten a normally distributed figure
 * lies within so many standard uncertainties of its mean.
 * @source NIST/SEMATECH e-Handbook, section 1.3.6.7.1 (1.645, from memory); here to the last digit of a double
 */
export const Z_95 = 1.6448536269514722;
