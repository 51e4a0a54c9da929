import { bisect } from '../numeric/solve.ts';

/**
 * Shares of linear red, green and blue in luminance: the Y row of the sRGB primaries (IEC
 * 61966-2-1), to the digits of CSS Color 4, 10.1 (D65 of x 0.3127, y 0.3290). They sum to 1.
 */
const redShare = 0.2126390058715103;
const greenShare = 0.7151686787677559;
const blueShare = 0.07219231536073371;
export const sharesOfY = [redShare, greenShare, blueShare] as const;

/** Luminance 0..1 of linear red, green and blue 0..1. */
export const luminanceOfLinear = (red: number, green: number, blue: number): number =>
  redShare * red + greenShare * green + blueShare * blue;

// ISO/CIE 11664-4: above t = 216/24389 (f = 6/29) f is a cube root, below it a straight line.
const joint = 216 / 24389;
const jointValue = 6 / 29;
const slope = 24389 / 27;

/** f(t) of CIE Lab, exact; t is 0..1 of the white. ISO/CIE 11664-4. */
export const cieCurve = (t: number): number => (t > joint ? Math.cbrt(t) : (slope * t + 16) / 116);

/** The t that has this f(t). ISO/CIE 11664-4. */
export const inverseCieCurve = (f: number): number =>
  f > jointValue ? f * f * f : ((116 * f - 16) * 27) / 24389;

/** The derivative of f where it is so much. */
export const slopeOfCieCurveAt = (f: number): number =>
  f > jointValue ? 1 / (3 * f ** 2) : slope / 116;

/** The derivative of f at t. */
export const slopeOfCieCurve = (t: number): number => slopeOfCieCurveAt(cieCurve(t));

export const curveSteps = 4096;

/**
 * f at t = i / 4096, with one entry more for interpolation at 1. Straight lines between entries
 * stay within 6e-6 of f (worst just above the joint: h^2 / 8 times the second derivative), 0.0007
 * L*.
 */
export const curveTable = Float32Array.from({ length: curveSteps + 2 }, (_, i) =>
  cieCurve(Math.min(1, i / curveSteps)),
);

/** f(t) by table, for loops over pixels: 0 <= t <= 1; up to 1 + 1/4096 it stays at 1. */
export function tabulatedCieCurve(t: number): number {
  const place = t * curveSteps;
  const entry = place | 0;
  const low = curveTable[entry];
  return low + (place - entry) * (curveTable[entry + 1] - low);
}

/** CIE L* 0..100 of a luminance 0..1. ISO/CIE 11664-4. */
export const lightnessOfLuminance = (luminance: number): number => 116 * cieCurve(luminance) - 16;

/** Luminance 0..1 of a CIE L* 0..100. ISO/CIE 11664-4. */
export const luminanceOfLightness = (lightness: number): number =>
  inverseCieCurve((lightness + 16) / 116);

// Read once, for the loop: some ways to load a file look imports up each time.
const curve = tabulatedCieCurve;

/** CIE L* 0..100 of linear red, green and blue 0..1, by table: within 0.001. */
export function lightnessOfLinear(red: number, green: number, blue: number): number {
  return 116 * curve(luminanceOfLinear(red, green, blue)) - 16;
}

// ASTM D1535: luminance factor Y (percent, perfect diffuser = 100) as a quintic in Munsell value V.
const C = [1.1914, -0.22533, 0.23352, -0.020484, 0.00081939] as const;

/** Luminance factor in percent of a Munsell value 0..10. Source: ASTM D1535. */
export function luminancePercentOfValue(value: number): number {
  const v = value;
  return v * (C[0] + v * (C[1] + v * (C[2] + v * (C[3] + v * C[4]))));
}

/** CIE L* 0..100 of a Munsell value 0..10. Sources: ASTM D1535, CIE 15. */
export function lightnessOfValue(value: number): number {
  return lightnessOfLuminance(luminancePercentOfValue(Math.min(10, Math.max(0, value))) / 100);
}

/**
 * Munsell value 0..10 (10 is white) of a CIE L*. The standard gives no inverse; the quintic rises
 * throughout, so halving finds it to 1e-9. Source: ASTM D1535.
 */
export function valueOfLightness(lightness: number): number {
  const wanted = 100 * luminanceOfLightness(Math.min(100, Math.max(0, lightness)));
  const isDarker = (value: number): boolean => luminancePercentOfValue(value) < wanted;
  const [low, high] = bisect(isDarker, 0, 10, () => 1e-11);
  return (low + high) / 2;
}
