// CIE 15 / ISO/CIE 11664-4: f(t) = cube root of t above 216/24389, a straight line below.

/** The exact function, for tables and single colours. t is 0..1 of the white. */
export const cieCurve = (t: number): number =>
  t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116;

const steps = 4096;

/**
 * f at t = i / 4096, with one entry more for interpolation at 1. Straight lines between entries stay
 * within 6e-6 of f (worst just above the joint: h^2 / 8 times the second derivative), 0.0007 L*.
 */
const table = Float32Array.from({ length: steps + 2 }, (_, i) => cieCurve(Math.min(1, i / steps)));

/** f by table for 0 <= t <= 1; up to 1 + 1/4096 it stays at 1. */
export function cieCurveFast(t: number): number {
  const place = t * steps;
  const at = place | 0;
  const low = table[at];
  return low + (place - at) * (table[at + 1] - low);
}

/** Shares of the linear channels in luminance: the Y row of the sRGB primaries, D65 (CSS Color 4). */
export const redShare = 0.2126390058715103;
export const greenShare = 0.7151686787677559;
export const blueShare = 0.07219231536073371;

// Read once, for the loop.
const curve = cieCurveFast;

/** CIE L* 0..100 of linear light 0..1, within 0.001. Source: IEC 61966-2-1, CIE 15. */
export function lightnessOfLinear(red: number, green: number, blue: number): number {
  return 116 * curve(redShare * red + greenShare * green + blueShare * blue) - 16;
}
