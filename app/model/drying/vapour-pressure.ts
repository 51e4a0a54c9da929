/**
 * Saturation vapour pressure over water in Pa; celsius in degrees, good from 0 to 60.
 * Source: A. L. Buck, 'New equations for computing vapor pressure and enhancement factor', 1981,
 * in the coefficients of his 1996 manual (from memory; held against a published table in the tests).
 */
export function vapourPressure(celsius: number): number {
  return 611.21 * Math.exp(((18.678 - celsius / 234.5) * celsius) / (257.14 + celsius));
}
