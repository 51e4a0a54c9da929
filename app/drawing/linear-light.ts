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
  return coded[Math.round(Math.min(1, Math.max(0, light)) * steps)] as number;
}

/** Luminance of linear red, green and blue, by the weights of IEC 61966-2-1. */
export const luminanceOf = (red: number, green: number, blue: number): number =>
  0.2126 * red + 0.7152 * green + 0.0722 * blue;
