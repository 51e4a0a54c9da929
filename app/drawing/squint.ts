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
  const last = (length - 1) * step;
  for (let line = 0; line < lines; line++) {
    const start = line * lineStep;
    for (let i = 0; i <= last; i += step) {
      let sum = (weights[0] as number) * (from[start + i] as number);
      for (let k = 1, away = step; k < weights.length; k++, away += step) {
        const before = i < away ? 0 : i - away;
        const after = Math.min(last, i + away);
        const both = (from[start + before] as number) + (from[start + after] as number);
        sum += (weights[k] as number) * both;
      }
      to[start + i] = sum;
    }
  }
}

/** A plane blurred, and its differences from the mean lessened. */
function softened(
  plane: Float32Array,
  { width, height }: LightPlanes,
  weights: Float64Array,
  contrast: number,
): Float32Array {
  const between = new Float32Array(plane.length);
  const out = new Float32Array(plane.length);
  blurLines(plane, between, [height, width, width, 1], weights);
  blurLines(between, out, [width, 1, height, width], weights);
  const mean = out.reduce((sum, light) => sum + light, 0) / out.length;
  for (let i = 0; i < out.length; i++) out[i] = mean + contrast * ((out[i] as number) - mean);
  return out;
}

/** The picture as half-closed eyes see it: RGBA bytes, of the planes' own size. */
export function squinted(
  light: LightPlanes,
  { sigmaShare, contrast }: Squint,
  grey: boolean,
): Uint8ClampedArray<ArrayBuffer> {
  const weights = gaussian(Math.max(0.3, sigmaShare * Math.max(light.width, light.height)));
  const [red, green, blue] = light.planes;
  const shown = grey
    ? [red.map((r, i) => luminanceOf(r, green[i] as number, blue[i] as number))]
    : light.planes;
  const soft = shown.map((plane) => softened(plane, light, weights, contrast));
  const rgba = new Uint8ClampedArray(red.length * 4).fill(255);
  for (let channel = 0; channel < 3; channel++) {
    const plane = soft[grey ? 0 : channel] as Float32Array;
    for (let i = 0; i < plane.length; i++) rgba[i * 4 + channel] = codeOfLight(plane[i] as number);
  }
  return rgba;
}
