/** Bins of the lightness histogram; bin i stands for L* i / 2.55. */
export const bins = 256;

/** The bin of a lightness: round(L* x 2.55), held within 0..255. */
export function binOf(lightness: number): number {
  const bin = Math.round(lightness * 2.55);
  return bin < 0 ? 0 : Math.min(bin, 255);
}

/** The lightness a bin stands for, L*. */
export const lightnessOfBin = (bin: number): number => bin / 2.55;

/** The bin of every pixel: a lightness plane in one byte a pixel. */
export function binsOf(lightness: Float32Array): Uint8Array {
  const map = new Uint8Array(lightness.length);
  for (let i = 0; i < map.length; i++) map[i] = binOf(lightness[i] as number);
  return map;
}

/** Pixels per bin of a lightness plane; 256 counts that sum to the plane's length. */
export function lightnessHistogram(lightness: Float32Array): Uint32Array {
  const counts = new Uint32Array(bins);
  for (let i = 0; i < lightness.length; i++) {
    const bin = binOf(lightness[i] as number);
    counts[bin] = (counts[bin] as number) + 1;
  }
  return counts;
}
