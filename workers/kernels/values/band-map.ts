import { binOf, bins, lightnessOfBin } from './histogram.ts';

// Read once, for the loop.
const bin = binOf;

/** Band, 1 is the lightest, of every bin; `limits` in L* from dark to light. */
export function bandOfBins(limits: readonly number[]): Uint8Array {
  return Uint8Array.from({ length: bins }, (_, at) => {
    const above = limits.filter((limit) => limit > lightnessOfBin(at)).length;
    return above + 1;
  });
}

/** Band of every pixel by the bin of its lightness, so that map and histogram never disagree. */
export function bandMapOf(lightness: Float32Array, limits: readonly number[]): Uint8Array {
  const bands = bandOfBins(limits);
  const map = new Uint8Array(lightness.length);
  for (let i = 0; i < map.length; i++) map[i] = bands[bin(lightness[i] as number)] as number;
  return map;
}
