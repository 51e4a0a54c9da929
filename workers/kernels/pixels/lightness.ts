import { cieCurveFast } from './cie-curve.ts';

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
