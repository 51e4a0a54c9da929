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
  while (at / startsPer >= (riseTo[code + 1] as number)) code++;
  return code;
});

/** Nearest code 0..255 of linear light; outside 0..1 it is clamped, not-a-number becomes 0. */
export function codeOfLinear(linear: number): number {
  if (!(linear > 0)) return 0;
  if (linear >= 1) return 255;
  let code = startOf[(linear * startsPer) | 0] as number;
  while (linear >= (riseTo[code + 1] as number)) code++;
  return code;
}
