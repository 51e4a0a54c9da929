import type { PixelSize } from '../raster/size.ts';
import { composed, type Homography } from './homography.ts';
import { type LightPyramid, readPhoto } from './light-pyramid.ts';

/** Where the outline of the painting shows along a side, px of the sheet beyond where it was taken to be. */
export interface SeenSide {
  /** Places on the sheet, px, near either end of the side, and the direction outwards. */
  readonly ends: readonly [readonly [number, number], readonly [number, number]];
  readonly outwards: readonly [number, number];
  /** How far outwards of them the outline shows. */
  readonly offsets: readonly [number, number];
  /** Share of the side along which it shows, 0..1. */
  readonly shown: number;
}

// Figures of this file: own.
/** How far to either side of it a side is sought, share of the long side. */
const reachShare = 0.025;
/** So many pieces of a side are looked at, and what is left out at its ends, share of it. */
const pieces = 24;
const endShare = 0.04;
/** A step of the light (its cube root) that counts half: what is under it is grain. */
const halfStep = 0.012;
/** A side shows where its pieces agree so far. */
const leastShown = 0.5;
/** Where along a side its ends are taken. */
const endAt = [0.12, 0.88] as const;

/** The light across a side in pieces: `pieces` rows of profiles from inside to outside, each the mean along its piece. */
function profilesOf(
  plane: Float32Array,
  width: number,
  margin: number,
  { width: w, height: h }: PixelSize,
  side: number,
): Float64Array {
  const length = 2 * margin + 1;
  const out = new Float64Array(pieces * length);
  const isAcross = side % 2 === 0;
  const long = isAcross ? w : h;
  for (let piece = 0; piece < pieces; piece++) {
    const from = Math.round(long * (endShare + ((1 - 2 * endShare) * piece) / pieces));
    const to = Math.round(long * (endShare + ((1 - 2 * endShare) * (piece + 1)) / pieces));
    for (let t = 0; t < length; t++) {
      // Pixels t - margin - 1/2 from the side, counted outwards.
      const off = t - margin;
      let sum = 0;
      for (let along = from; along < to; along++) {
        const x = isAcross ? along : side === 1 ? w + off : -1 - off;
        const y = isAcross ? (side === 2 ? h + off : -1 - off) : along;
        const at = (y + margin + 1) * width + x + margin + 1;
        sum += plane[at];
      }
      out[piece * length + t] = sum / Math.max(1, to - from);
    }
  }
  return out;
}

/** Slopes of profiles, between pixels: entry t lies on the border between t - 1 and t. */
function stepsOf(profiles: Float64Array, length: number): Float64Array {
  const steps = new Float64Array(profiles.length);
  for (let piece = 0; piece < pieces; piece++)
    for (let t = 2; t < length - 1; t++) {
      const i = piece * length + t;
      steps[i] = (profiles[i + 1] + profiles[i] - profiles[i - 1] - profiles[i - 2]) / 2;
    }
  return steps;
}

interface Line {
  readonly a: number;
  readonly b: number;
  readonly sign: number;
  readonly shown: number;
}

/** So many lines a side and sign are told apart, and how far apart they lie at their middles, px. */
const mostLines = 2;
const apartPx = 2.5;

/** The lines along a side whose steps go most alike, outwards lighter and outwards darker. */
function likelyLines(steps: Float64Array, length: number, margin: number): Line[] {
  const soft = steps.map((step) => step / (Math.abs(step) + halfStep));
  const lines: Line[] = [];
  for (let a = 3; a < length - 2; a++)
    for (let b = Math.max(3, a - margin); b < Math.min(length - 2, a + margin + 1); b++) {
      let sum = 0;
      for (let piece = 0; piece < pieces; piece++) {
        const t = a + ((b - a) * (piece + 0.5)) / pieces;
        sum += soft[piece * length + Math.round(t)];
      }
      const shown = Math.abs(sum) / pieces;
      if (shown >= leastShown) lines.push({ a, b, sign: Math.sign(sum), shown });
    }
  lines.sort((one, two) => two.shown - one.shown);
  return [1, -1].flatMap((sign) => {
    const kept: Line[] = [];
    for (const line of lines) {
      if (line.sign !== sign || kept.length >= mostLines) continue;
      const middle = (line.a + line.b) / 2;
      if (kept.every(({ a, b }) => Math.abs((a + b) / 2 - middle) > apartPx)) kept.push(line);
    }
    return kept;
  });
}

/** The same line to parts of a px: through the middles of the steps of its pieces, each as strong as it is. */
function finely(
  steps: Float64Array,
  length: number,
  { a, b, sign }: Line,
): readonly [number, number] | null {
  let [n, x, y, xx, xy] = [0, 0, 0, 0, 0];
  for (let piece = 0; piece < pieces; piece++) {
    const part = (piece + 0.5) / pieces;
    const near = Math.round(a + (b - a) * part);
    let [weight, sum] = [0, 0];
    for (let t = Math.max(0, near - 2); t <= Math.min(length - 1, near + 2); t++) {
      const own = Math.max(0, sign * steps[piece * length + t]);
      weight += own * own;
      sum += own * own * t;
    }
    const strength = Math.sqrt(weight);
    if (strength < halfStep) continue;
    const counted = Math.min(1, strength / (4 * halfStep));
    const at = sum / weight;
    n += counted;
    x += counted * part;
    y += counted * at;
    xx += counted * part * part;
    xy += counted * part * at;
  }
  if (n < pieces / 6) return null;
  const spread = xx - (x * x) / n;
  const slope = spread > 1e-6 ? (xy - (x * y) / n) / spread : 0;
  const at = (part: number): number => (y - slope * x) / n + slope * part;
  return [at(endAt[0]), at(endAt[1])];
}

/** Where a side runs on the sheet, px, as a share of its length; and which way is outwards. */
const placesOf = (side: number, { width, height }: PixelSize) =>
  [
    { at: (part: number) => [part * width, 0] as const, outwards: [0, -1] as const },
    { at: (part: number) => [width, part * height] as const, outwards: [1, 0] as const },
    { at: (part: number) => [part * width, height] as const, outwards: [0, 1] as const },
    { at: (part: number) => [0, part * height] as const, outwards: [-1, 0] as const },
  ][side];

/**
 * Straight steps of light along each of the four sides, near where a homography lays them: the painting against its
 * border, the border against the board. `size` is that of the sheet it takes to the photo. No step: an empty list.
 */
export function seenSides(photo: LightPyramid, toPhoto: Homography, size: PixelSize): SeenSide[][] {
  const margin = Math.ceil(reachShare * Math.max(size.width, size.height));
  const shift = Float64Array.of(1, 0, -margin - 1, 0, 1, -margin - 1, 0, 0, 1);
  const around = { width: size.width + 2 * margin + 2, height: size.height + 2 * margin + 2 };
  const plane = readPhoto(photo, composed(toPhoto, shift), around);
  const length = 2 * margin + 1;
  const [from, to] = endAt.map((part) => endShare + (1 - 2 * endShare) * part);
  return [0, 1, 2, 3].map((side) => {
    const profiles = profilesOf(plane, around.width, margin, size, side);
    if (profiles.some(Number.isNaN)) return [];
    const steps = stepsOf(profiles, length);
    const { at, outwards } = placesOf(side, size);
    return likelyLines(steps, length, margin).flatMap((line): SeenSide[] => {
      const found = finely(steps, length, line);
      if (!found) return [];
      // Step t lies between the pixels t - 1 and t: it is the side itself where t is the margin.
      const offsets = [found[0] - margin, found[1] - margin] as const;
      return [{ ends: [at(from), at(to)], outwards, offsets, shown: line.shown }];
    });
  });
}
