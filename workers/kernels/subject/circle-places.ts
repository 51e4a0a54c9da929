import type { PixelSize } from '../../../app/model/pixel-size.ts';
import { distancesTo } from './distances.ts';

/** What a cell's place relative to the circle tells. */
export interface CirclePlaces {
  /** Weight of a cell's colour as a sample: the ground beside the circle is what matters. */
  readonly weights: Float32Array;
  /** Added to what the colours favour. */
  readonly prior: Float32Array;
}

/** She circles loosely: so deep in the circle, as a share of its size, the line is most likely. */
const usualGap = 0.05;
const mostPrior = 0.8;
/** Ground further away than this share of the circle's size counts for e times less, and less on. */
const groundReach = 0.35;
const leastWeight = 0.02;

/** `inside` holds 1 within the circle. */
export function circlePlaces(inside: Uint8Array, size: PixelSize): CirclePlaces {
  let area = 0;
  for (let i = 0; i < inside.length; i++) area += inside[i] as number;
  const side = Math.sqrt(Math.max(1, area));
  const deep = distancesTo(inside, 0, size);
  const away = distancesTo(inside, 1, size);
  const prior = deep.map((distance) => {
    const gap = Math.min(distance / side, 1);
    return mostPrior * Math.max(-1, Math.min(1, (gap - usualGap) / usualGap));
  });
  const weights = away.map((distance) =>
    Math.max(leastWeight, Math.exp(-distance / (groundReach * side))),
  );
  return { prior, weights };
}
