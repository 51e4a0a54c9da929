import type { Lab } from '../model/lab.ts';
import { luminanceOf } from './linear-light.ts';

const curve = (t: number): number =>
  t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116;

/**
 * Linear red, green, blue 0..1 to Lab (D65 / 2 degree, ISO/CIE 11664-4). The rows of X and Z are
 * those of IEC 61966-2-1 divided by their sums, so that a grey has a* = b* = 0.
 */
export function lightToLab(red: number, green: number, blue: number): Lab {
  const x = curve(0.4338873456 * red + 0.3762240091 * green + 0.1898886453 * blue);
  const y = curve(luminanceOf(red, green, blue));
  const z = curve(0.0177500401 * red + 0.1094476209 * green + 0.8728023391 * blue);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}
