import type { Lab } from '../../../app/model/lab.ts';

// ISO/CIE 11664-4: the inverse of f, kappa = 24389/27.
const inverse = (f: number): number => (f > 6 / 29 ? f * f * f : ((116 * f - 16) * 27) / 24389);

/** X, Y, Z of a CIE Lab colour, each as a share of the white's. */
export function xyzOfLab([lightness, a, b]: Lab): readonly [x: number, y: number, z: number] {
  const f = (lightness + 16) / 116;
  return [inverse(f + a / 500), inverse(f), inverse(f - b / 200)];
}
