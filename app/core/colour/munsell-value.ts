import { bisect } from '../numeric/find-root.ts';
import { lightnessOfLuminance, luminanceOfLightness } from './luminance.ts';

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
