// Made pictures with known edges: areas blurred by a Gaussian, with noise, sampled at pixel centres.
import type { PixelSize } from '../../../app/core/raster/size.ts';
import { seeded } from './seeded.ts';

/** Share of a unit normal distribution below z. Source: Abramowitz, Stegun, 1964, 7.1.26 (1.5e-7). */
export function normalShare(z: number): number {
  if (Math.abs(z) > 6) return z < 0 ? 0 : 1; // 1e-9 off, and most of a picture
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const tail =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const erf = 1 - tail * Math.exp(-x * x);
  return z < 0 ? (1 - erf) / 2 : (1 + erf) / 2;
}

export interface MadeEdge {
  /** Where it lies in the distance that the picture is drawn over, px. */
  readonly at: number;
  /** Change of lightness across, L*; signed. */
  readonly rise: number;
}

export interface MadePicture {
  readonly size: PixelSize;
  readonly slots: Uint8Array;
  readonly lightness: Float32Array;
}

const noises = new Map<string, Float64Array>();

/** Noise of standard deviation 1, nearly normal: twelve even random numbers each (common practice). */
function noiseOf(seed: number, count: number): Float64Array {
  const key = `${seed} ${count}`;
  const kept = noises.get(key);
  if (kept) return kept;
  const random = seeded(seed);
  const noise = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let sum = -6;
    for (let n = 0; n < 12; n++) sum += random();
    noise[i] = sum;
  }
  noises.set(key, noise);
  return noise;
}

type Distance = (x: number, y: number) => number;
const ways = new WeakMap<Distance, Float64Array>();

/** The distance at every pixel's middle; a function goes with one size of picture. */
function waysOf(distance: Distance, { width, height }: PixelSize): Float64Array {
  const kept = ways.get(distance);
  if (kept?.length === width * height) return kept;
  const found = new Float64Array(width * height);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) found[i] = distance(x + 0.5, y + 0.5);
  }
  ways.set(distance, found);
  return found;
}

/**
 * Edges drawn over a distance: along a direction for straight lines, from a centre for circles.
 * Slots are the areas between the edges.
 */
export function blurredPicture(
  size: PixelSize,
  distance: Distance,
  edges: readonly MadeEdge[],
  settings: { base: number; sigma: number; noise: number; seed: number },
): MadePicture {
  const slots = new Uint8Array(size.width * size.height);
  const lightness = new Float32Array(slots.length);
  const noise = noiseOf(settings.seed, slots.length);
  const way = waysOf(distance, size);
  lightness.fill(settings.base);
  for (const { at, rise } of edges) {
    for (let i = 0; i < slots.length; i++) {
      const past = (way[i] as number) - at;
      lightness[i] = (lightness[i] as number) + rise * normalShare(past / settings.sigma);
      if (past > 0) slots[i] = (slots[i] as number) + 1;
    }
  }
  for (let i = 0; i < slots.length; i++) {
    lightness[i] = (lightness[i] as number) + settings.noise * (noise[i] as number);
  }
  return { size, slots, lightness };
}

/** Distance along a direction from the picture's middle, degrees from the horizontal. */
export function slanting({ width, height }: PixelSize, degrees: number) {
  const angle = (degrees * Math.PI) / 180;
  const [across, down] = [Math.cos(angle), Math.sin(angle)];
  return (x: number, y: number): number => (x - width / 2) * across + (y - height / 2) * down;
}

/** Distance from a circle of that radius about the picture's middle, px; positive outside. */
export function round({ width, height }: PixelSize, radius: number) {
  return (x: number, y: number): number => Math.hypot(x - width / 2, y - height / 2) - radius;
}
