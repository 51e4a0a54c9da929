import type { Lab } from './lab.ts';

// sRGB transfer curve, IEC 61966-2-1: straight up to and including 0.04045, a power above.

/** Linear light 0..1 of an encoded channel 0..1. */
export function linearOfEncoded(encoded: number): number {
  return encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4;
}

/** Encoded channel 0..1 of linear light 0..1. */
export function encodedOfLinear(linear: number): number {
  return linear <= 0.0031308 ? linear * 12.92 : 1.055 * linear ** (1 / 2.4) - 0.055;
}

/** Linear light of the 256 codes. */
export const linearOfCode: Float32Array = Float32Array.from({ length: 256 }, (_, code) =>
  linearOfEncoded(code / 255),
);

// riseTo[c] is the least linear light that rounds to code c; one more entry ends the search.
const riseTo = Float64Array.from({ length: 257 }, (_, code) =>
  code === 0 ? Number.NEGATIVE_INFINITY : linearOfEncoded((code - 0.5) / 255),
);
riseTo[256] = Number.POSITIVE_INFINITY;

const startsPer = 1024;
const startOf = Uint8Array.from({ length: startsPer + 1 }, (_, at) => {
  let code = 0;
  while (at / startsPer >= riseTo[code + 1]) code++;
  return code;
});

/** Nearest code 0..255 of linear light; outside 0..1 it is clamped, not-a-number becomes 0. */
export function codeOfLinear(linear: number): number {
  if (!(linear > 0)) return 0;
  if (linear >= 1) return 255;
  let code = startOf[(linear * startsPer) | 0];
  while (linear >= riseTo[code + 1]) code++;
  return code;
}

/** Light 0..1 of a code 0..255 (IEC 61966-2-1). */
export const lightOfCode = Float64Array.from({ length: 256 }, (_, code) => {
  const c = code / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
});

const steps = 4096;

/** Linear light to code; finer than a code everywhere, as the curve is steepest at 12.92 codes a step. */
const coded = Uint8Array.from({ length: steps + 1 }, (_, i) => {
  const light = i / steps;
  return Math.round(
    255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055),
  );
});

/** Code 0..255 of a light, which is held within 0..1; at most one code off. */
export function codeOfLight(light: number): number {
  return coded[Math.round(Math.min(1, Math.max(0, light)) * steps)];
}

/** Luminance of linear red, green and blue, by the weights of IEC 61966-2-1. */
export const luminanceOf = (red: number, green: number, blue: number): number =>
  0.2126 * red + 0.7152 * green + 0.0722 * blue;

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

/**
 * RGBA bytes made grey in place: each pixel gets the neutral grey of its own luminance, so L* stays.
 * Weights of IEC 61966-2-1; at most one code off.
 */
export function makeGrey(rgba: Uint8ClampedArray): void {
  for (let p = 0; p < rgba.length; p += 4) {
    const code = codeOfLight(
      luminanceOf(lightOfCode[rgba[p]], lightOfCode[rgba[p + 1]], lightOfCode[rgba[p + 2]]),
    );
    rgba[p] = code;
    rgba[p + 1] = code;
    rgba[p + 2] = code;
  }
}
