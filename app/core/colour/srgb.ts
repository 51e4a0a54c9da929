import { luminanceOfLinear } from './lightness.ts';

/**
 * Linear light 0..1 of an encoded channel 0..1: the sRGB transfer curve, IEC 61966-2-1, straight up
 * to and including 0.04045, a power above.
 */
export function decodeSrgb(encoded: number): number {
  return encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4;
}

/** Linear light 0..1 of the 256 codes. */
export const linearOfCode: Float32Array = Float32Array.from({ length: 256 }, (_, code) =>
  decodeSrgb(code / 255),
);

// The transfer curve the other way round is a search in this table, so that the curve stands here
// once:
// leastLightOf[c] is the least linear light whose nearest code is c; one more entry ends the
// search.
const leastLightOf = Float64Array.from({ length: 257 }, (_, code) =>
  code === 0 ? Number.NEGATIVE_INFINITY : decodeSrgb((code - 0.5) / 255),
);
leastLightOf[256] = Number.POSITIVE_INFINITY;

const startsPer = 1024;

/** The code at which the search begins, by linear light in 1024 steps. */
const startOf = Uint8Array.from({ length: startsPer + 1 }, (_, step) => {
  let code = 0;
  while (step / startsPer >= leastLightOf[code + 1]) code++;
  return code;
});

/** Nearest code 0..255 of linear light; outside 0..1 it is clamped, not-a-number becomes 0. */
export function codeOfLinear(linear: number): number {
  if (!(linear > 0)) return 0;
  if (linear >= 1) return 255;
  let code = startOf[(linear * startsPer) | 0];
  while (linear >= leastLightOf[code + 1]) code++;
  return code;
}

/**
 * RGBA bytes made grey in place: each pixel gets the neutral grey of its own luminance, so that L*
 * stays.
 */
export function makeGrey(rgba: Uint8ClampedArray): void {
  let [last, code] = [-1, 0];
  for (let p = 0; p < rgba.length; p += 4) {
    const [r, g, b] = [rgba[p], rgba[p + 1], rgba[p + 2]];
    const colour = (r << 16) | (g << 8) | b;
    if (colour !== last) {
      last = colour;
      code = codeOfLinear(luminanceOfLinear(linearOfCode[r], linearOfCode[g], linearOfCode[b]));
    }
    rgba[p] = code;
    rgba[p + 1] = code;
    rgba[p + 2] = code;
  }
}
