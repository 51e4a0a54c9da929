/** Code 0..255 to linear light 0..1 (IEC 61966-2-1). */
const linear = Float64Array.from({ length: 256 }, (_, code) => {
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

/**
 * RGBA bytes made grey in place: each pixel gets the neutral grey of its own luminance, so L* stays.
 * Weights of IEC 61966-2-1; at most one code off.
 */
export function makeGrey(rgba: Uint8ClampedArray): void {
  for (let p = 0; p < rgba.length; p += 4) {
    const light =
      0.2126 * (linear[rgba[p] as number] as number) +
      0.7152 * (linear[rgba[p + 1] as number] as number) +
      0.0722 * (linear[rgba[p + 2] as number] as number);
    const code = coded[Math.round(light * steps)] as number;
    rgba[p] = code;
    rgba[p + 1] = code;
    rgba[p + 2] = code;
  }
}
