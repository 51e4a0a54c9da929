import type { PixelSize } from '../raster/size.ts';
import { type Alignment, displacementRows, smallStep } from './align.ts';
import { composed, type Homography } from './homography.ts';
import type { SeenSide } from './side-lines.ts';

/** A place by the picture and by the outline of the painting together. */
export interface SettledPlace {
  readonly toPhoto: Homography;
  /** How far the worst corner may be off, share of the long side: a deviation. */
  readonly doubt: number;
  /** Sides whose outline shows and agrees with the picture, of four. */
  readonly agreeing: number;
  /** Sides along which lines show, but none that agrees. */
  readonly contradicting: number;
}

// Figures of this file: own.
/** Not even the place that a picture tells best is known better, share of the long side: paper and lenses bend. */
const leastKnown = 0.0008;
/** An outline is known to this, share of the long side: tape creeps, paint runs over. */
const outlineKnown = 0.0012;
const outlineNoise = (2 * outlineKnown) ** 2;
/** A side that is not seen is as bad as one so many squared deviations off; and a line seen along half its length as half of this. */
const unseen = 7;
const hidden = 6;
/** An outline farther off than this many of its deviations is that of something else. */
const mostOff = 3.5;

const unknowns = 8;

/** Deviation along a row of what moves a place, in halves of the long side. */
function varianceOf(covariance: Float64Array, row: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < unknowns; i++)
    for (let j = 0; j < unknowns; j++) sum += row[i] * covariance[i * unknowns + j] * row[j];
  return sum;
}

/** Variance of a place, the worse of its two directions. */
function varianceAt(covariance: Float64Array, u: number, v: number): number {
  const [x, y] = displacementRows(u, v);
  return Math.max(varianceOf(covariance, x), varianceOf(covariance, y));
}

/** What is known of the unknowns: how far they have moved, their covariance, and how badly readings fit so far. */
interface Known {
  readonly moved: Float64Array;
  readonly covariance: Float64Array;
  readonly cost: number;
  readonly agreeing: number;
}

interface Reading {
  readonly row: Float64Array;
  readonly off: number;
}

/** With the readings of one side taken in one by one (Kalman 1960); null where it lies too far off. */
function withSide(known: Known, readings: readonly Reading[], shown: number): Known | null {
  const moved = Float64Array.from(known.moved);
  const covariance = Float64Array.from(known.covariance);
  let cost = known.cost + hidden * (1 - shown);
  for (const { row, off } of readings) {
    const far = takeIn(covariance, moved, row, off);
    if (far > mostOff * mostOff) return null;
    cost += far;
  }
  return { moved, covariance, cost, agreeing: known.agreeing + 1 };
}

/**
 * What the picture says of a place, made no surer anywhere than anything can be known, together with the lines seen
 * along its four sides: of all ways to take one line a side, or none, the one that agrees best.
 */
export function settlePlace(
  { toPhoto, covariance }: Pick<Alignment, 'toPhoto' | 'covariance'>,
  sides: readonly (readonly SeenSide[])[],
  { width, height }: PixelSize,
): SettledPlace {
  const half = Math.max(width, height) / 2;
  const [edgeX, edgeY] = [width / 2 / half, height / 2 / half];
  let best = Number.POSITIVE_INFINITY;
  for (const x of [-0.8, -0.4, 0, 0.4, 0.8])
    for (const y of [-0.8, -0.4, 0, 0.4, 0.8])
      best = Math.min(best, varianceAt(covariance, x * edgeX, y * edgeY));
  const times = Math.max(1, (2 * leastKnown) ** 2 / best);
  const readingsOf = ({ ends, outwards, offsets }: SeenSide): Reading[] =>
    ends.map(([x, y], n) => {
      const [alongX, alongY] = displacementRows((x - width / 2) / half, (y - height / 2) / half);
      // A step is taken back from the sheet's places, so an outline farther out is a step inwards.
      const row = alongX.map((value, k) => -(outwards[0] * value + outwards[1] * alongY[k]));
      return { row, off: offsets[n] / half };
    });
  const start: Known = {
    moved: new Float64Array(unknowns),
    covariance: covariance.map((value) => value * times),
    cost: 0,
    agreeing: 0,
  };
  let ways: Known[] = [start];
  for (const lines of sides) {
    const read = lines.map((line) => ({ readings: readingsOf(line), shown: line.shown }));
    ways = ways.flatMap((way) => [
      { ...way, cost: way.cost + unseen },
      ...read.flatMap(({ readings, shown }) => withSide(way, readings, shown) ?? []),
    ]);
  }
  const likeliest = ways.reduce((least, way) => (way.cost < least.cost ? way : least));
  const visible = sides.filter((lines) => lines.length > 0).length;
  // Lines of which most lie elsewhere are those of something else, such as the board round her border.
  const isOutline = likeliest.agreeing >= Math.max(2, visible - 1);
  const known = isOutline ? likeliest : start;
  const doubt = Math.sqrt(
    Math.max(
      ...[-1, 1].flatMap((x) =>
        [-1, 1].map((y) => varianceAt(known.covariance, x * edgeX, y * edgeY)),
      ),
    ),
  );
  return {
    toPhoto: composed(toPhoto, smallStep(known.moved, width, height, half)),
    doubt: doubt / 2,
    agreeing: known.agreeing,
    contradicting: visible - known.agreeing,
  };
}

/** One reading of a sum of the unknowns taken into what is known of them; how far off it was, squared deviations. */
function takeIn(
  known: Float64Array,
  moved: Float64Array,
  row: Float64Array,
  reading: number,
): number {
  const along = new Float64Array(unknowns);
  let [variance, expected] = [outlineNoise, 0];
  for (let i = 0; i < unknowns; i++) {
    for (let j = 0; j < unknowns; j++) along[i] += known[i * unknowns + j] * row[j];
    variance += row[i] * along[i];
    expected += row[i] * moved[i];
  }
  const left = reading - expected;
  for (let i = 0; i < unknowns; i++) {
    moved[i] += (along[i] * left) / variance;
    for (let j = 0; j < unknowns; j++) known[i * unknowns + j] -= (along[i] * along[j]) / variance;
  }
  return (left * left) / variance;
}
