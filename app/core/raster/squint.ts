import { type Lab, labOfLinear } from '../colour/lab.ts';
import { luminanceOfLinear } from '../colour/lightness.ts';
import { codeOfLinear, linearOfCode } from '../colour/srgb.ts';

/** RGBA bytes, row by row: what a canvas hands out. */
export interface Pixels {
  readonly data: Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
}

/**
 * Mean colour, in linear light, of the pixels whose centres lie within `radius` px of (x, y), both in
 * px from the upper left corner; at least the pixel that holds the point. Outside nothing counts: the
 * point itself is held inside.
 */
export function meanColour(
  { data, width, height }: Pixels,
  x: number,
  y: number,
  radius: number,
): Lab {
  const middleX = Math.min(width - 1, Math.max(0, Math.floor(x)));
  const middleY = Math.min(height - 1, Math.max(0, Math.floor(y)));
  const reach = Math.ceil(radius);
  let [count, red, green, blue] = [0, 0, 0, 0];
  const top = Math.max(0, middleY - reach);
  const bottom = Math.min(height - 1, middleY + reach);
  for (let row = top; row <= bottom; row++) {
    const left = Math.max(0, middleX - reach);
    const right = Math.min(width - 1, middleX + reach);
    for (let column = left; column <= right; column++) {
      const held = row === middleY && column === middleX;
      if (!held && Math.hypot(column + 0.5 - x, row + 0.5 - y) > radius) continue;
      const p = (row * width + column) * 4;
      count++;
      red += linearOfCode[data[p]];
      green += linearOfCode[data[p + 1]];
      blue += linearOfCode[data[p + 2]];
    }
  }
  return labOfLinear(red / count, green / count, blue / count);
}

/** Linear light 0..1 in three planes, row by row. */
export interface LightPlanes {
  readonly width: number;
  readonly height: number;
  readonly planes: readonly [Float32Array, Float32Array, Float32Array];
}

/** Long side at which a picture is squinted at, px: plenty for what is blurred anyway. */
const squintLongSidePx = 320;

/** A picture reduced by whole blocks, averaged in linear light. */
export function reducedLight({ data, width, height }: Pixels): LightPlanes {
  const block = Math.max(1, Math.ceil(Math.max(width, height) / squintLongSidePx));
  const across = Math.ceil(width / block);
  const down = Math.ceil(height / block);
  const planes = [0, 1, 2].map(() => new Float32Array(across * down));
  const [red, green, blue] = planes as [Float32Array, Float32Array, Float32Array];
  const counts = new Uint32Array(across * down);
  for (let y = 0, p = 0; y < height; y++) {
    const row = Math.floor(y / block) * across;
    for (let x = 0; x < width; x++, p += 4) {
      const i = row + Math.floor(x / block);
      counts[i] = counts[i] + 1;
      red[i] = red[i] + linearOfCode[data[p]];
      green[i] = green[i] + linearOfCode[data[p + 1]];
      blue[i] = blue[i] + linearOfCode[data[p + 2]];
    }
  }
  for (const plane of planes)
    for (let i = 0; i < plane.length; i++) plane[i] = plane[i] / counts[i];
  return { width: across, height: down, planes: [red, green, blue] };
}

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
      let sum = weights[0] * from[start + i];
      for (let k = 1, away = step; k < weights.length; k++, away += step) {
        const before = i < away ? 0 : i - away;
        const after = Math.min(last, i + away);
        const both = from[start + before] + from[start + after];
        sum += weights[k] * both;
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
  for (let i = 0; i < out.length; i++) out[i] = mean + contrast * (out[i] - mean);
  return out;
}

/** The picture as half-closed eyes see it: RGBA bytes, of the planes' own size. */
export function applySquint(
  light: LightPlanes,
  { sigmaShare, contrast }: Squint,
  grey: boolean,
): Uint8ClampedArray<ArrayBuffer> {
  const weights = gaussian(Math.max(0.3, sigmaShare * Math.max(light.width, light.height)));
  const [red, green, blue] = light.planes;
  const shown = grey ? [red.map((r, i) => luminanceOfLinear(r, green[i], blue[i]))] : light.planes;
  const soft = shown.map((plane) => softened(plane, light, weights, contrast));
  const rgba = new Uint8ClampedArray(red.length * 4).fill(255);
  for (let channel = 0; channel < 3; channel++) {
    const plane = soft[grey ? 0 : channel];
    for (let i = 0; i < plane.length; i++) rgba[i * 4 + channel] = codeOfLinear(plane[i]);
  }
  return rgba;
}
