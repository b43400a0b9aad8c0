/**
 * Half the width of a 95 % interval over the standard uncertainty, for a normal distribution.
 * Source: JCGM 100:2008 (GUM), 4.3.4.
 */
export const COVERAGE = 1.96;
