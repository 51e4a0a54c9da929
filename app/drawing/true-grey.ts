import { codeOfLight, lightOfCode, luminanceOf } from './linear-light.ts';

/**
 * RGBA bytes made grey in place: each pixel gets the neutral grey of its own luminance, so L* stays.
 * Weights of IEC 61966-2-1; at most one code off.
 */
export function makeGrey(rgba: Uint8ClampedArray): void {
  for (let p = 0; p < rgba.length; p += 4) {
    const code = codeOfLight(
      luminanceOf(
        lightOfCode[rgba[p] as number] as number,
        lightOfCode[rgba[p + 1] as number] as number,
        lightOfCode[rgba[p + 2] as number] as number,
      ),
    );
    rgba[p] = code;
    rgba[p + 1] = code;
    rgba[p + 2] = code;
  }
}
