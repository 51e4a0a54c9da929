import { codeOfLight, luminanceOf } from './linear-light.ts';
import type { LightPlanes } from './reduced-light.ts';

export interface Squint {
  /** Sigma of the blur as a share of the long side. */
  readonly sigmaShare: number;
  /** What is left of the difference from the mean light, 0..1. */
  readonly contrast: number;
}

/**
 * Half-closed eyes, from hardly (0) to nearly shut (1). The blur goes from 0.25 to 1.5 % of the long
 * side; the figures are a guess set by eye, no source.
 */
export const squintOf = (strength: number): Squint => ({
  sigmaShare: 0.0025 + 0.0125 * strength,
  contrast: 0.85 - 0.35 * strength,
});

/** A Gaussian of that sigma, px, as weights from its middle outwards; they sum to one over both sides. */
function gaussian(sigma: number): Float64Array {
  const weights = Float64Array.from({ length: Math.ceil(3 * sigma) + 1 }, (_, i) =>
    Math.exp(-(i * i) / (2 * sigma * sigma)),
  );
  const sum = weights.reduce((all, weight, i) => all + (i ? 2 : 1) * weight, 0);
  return weights.map((weight) => weight / sum);
}

/** One pass along lines; beyond the ends the last pixel goes on. */
function blurLines(
  from: Float32Array,
  to: Float32Array,
  [lines, lineStep, length, step]: readonly [number, number, number, number],
  weights: Float64Array,
): void {
  for (let line = 0; line < lines; line++) {
    const start = line * lineStep;
    for (let i = 0; i < length; i++) {
      let sum = (weights[0] as number) * (from[start + i * step] as number);
      for (let k = 1; k < weights.length; k++) {
        const before = start + Math.max(0, i - k) * step;
        const after = start + Math.min(length - 1, i + k) * step;
        sum += (weights[k] as number) * ((from[before] as number) + (from[after] as number));
      }
      to[start + i * step] = sum;
    }
  }
}

/** The picture as half-closed eyes see it: RGBA bytes, of the planes' own size. */
export function squinted(
  { width, height, planes }: LightPlanes,
  { sigmaShare, contrast }: Squint,
  grey: boolean,
): Uint8ClampedArray<ArrayBuffer> {
  const weights = gaussian(Math.max(0.3, sigmaShare * Math.max(width, height)));
  const between = new Float32Array(width * height);
  const blurred = planes.map((plane) => {
    const out = new Float32Array(width * height);
    blurLines(plane, between, [height, width, width, 1], weights);
    blurLines(between, out, [width, 1, height, width], weights);
    const mean = out.reduce((sum, light) => sum + light, 0) / out.length;
    return out.map((light) => mean + contrast * (light - mean));
  });
  const [red, green, blue] = blurred as [Float32Array, Float32Array, Float32Array];
  const rgba = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let i = 0, p = 0; i < red.length; i++, p += 4) {
    const light = [red[i] as number, green[i] as number, blue[i] as number] as const;
    const y = luminanceOf(...light);
    for (let c = 0; c < 3; c++) rgba[p + c] = codeOfLight(grey ? y : (light[c] as number));
  }
  return rgba;
}
