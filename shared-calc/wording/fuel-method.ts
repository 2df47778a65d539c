/** How a curve was found, in words, with its sources: for the report of a fill test. */
export const FUEL_METHOD: readonly string[] = [
  'Each pour adds to a running sum of usable fuel. The sum’s error is that of the start, that of each container’s scale (the same in every pour from it), and that of each pour; so the errors of neighbouring rows go together.',
  'A reading says in which division of the scale the needle stood, and at a stop only on which side of it. Filling reads a little low and draining a little high; the curve lies between.',
  'The curve rises throughout: the logarithm of its slope is fitted by penalised generalised least squares. How far it may bend is averaged over what the readings support, unless a person chose it.',
  'The band comes from 400 refits, each with the errors of the rows, the bend and the centre of the penalty drawn anew from one fixed seed. The figure to plan on is the 5 % one, the upper edge is the 95 % one; read to the nearest division they hold the error of the reading too.',
  'On invented tanks with known truth the band held the truth at about nine readings in ten. For one gauge it may lie wholly to one side; nothing is promised outside the readings that moved.',
];

export const FUEL_SOURCES: readonly string[] = [
  'J. O. Ramsay, Estimating smooth monotone functions, 1998 (a curve by the logarithm of its slope)',
  'J. M. Bardsley, A. Solonen, H. Haario, M. Laine, Randomize-then-optimize, 2014 (the refits)',
  'L. Tierney, J. B. Kadane, Accurate approximations for posterior moments and marginal densities, 1986 (how far it may bend)',
  'JCGM 100:2008, Guide to the expression of uncertainty in measurement (the errors of the sums)',
];
