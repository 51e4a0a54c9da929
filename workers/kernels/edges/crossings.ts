import type { PixelSize } from '../../../app/model/pixel-size.ts';
import type { ContourLine } from './contour-line.ts';
import { middle, samples } from './edge-profile.ts';

/** How many further contours are looked for on either side. */
const most = 4;
const half = samples / 2;
/** Looked for this far, samples: the tail of an edge beyond the profile still reaches into it. */
const farthest = 28;

/** Where a normal meets further contours on one side, in samples from the contour; the nearest first. */
export interface SideCrossings {
  readonly ways: Float64Array;
  count: number;
  /** Samples there are before the picture ends. */
  room: number;
}

export const noCrossings = (): SideCrossings => ({
  ways: new Float64Array(most),
  count: 0,
  room: half,
});

/**
 * Walks from place i of a contour along its normal, to slot b for `side` 1 and to slot a for -1, in
 * steps of `scale` px, and notes where the slot changes.
 */
export function findCrossings(
  slots: Uint8Array,
  { width, height }: PixelSize,
  line: ContourLine,
  i: number,
  side: 1 | -1,
  scale: number,
  ownSlot: number,
  found: SideCrossings,
): void {
  const stepX = (line.normalX[i] as number) * scale * side;
  const stepY = (line.normalY[i] as number) * scale * side;
  let x = (line.x[i] as number) + stepX / 2;
  let y = (line.y[i] as number) + stepY / 2;
  found.count = 0;
  found.room = half;
  let slot = -1;
  for (let k = 0; k < farthest; k++, x += stepX, y += stepY) {
    const column = Math.floor(x);
    const row = Math.floor(y);
    if (column < 0 || row < 0 || column >= width || row >= height) {
      found.room = Math.min(half, k);
      return;
    }
    const now = slots[row * width + column] as number;
    if (slot === -1) {
      // The line runs between the stairs: its own side may begin a little later.
      if (now === ownSlot || k >= 2) slot = now;
      continue;
    }
    if (now === slot) continue;
    slot = now;
    if (found.count < most) found.ways[found.count++] = k;
  }
}

/** A way from the contour as a place in the profile. */
export const placeOf = (way: number, side: 1 | -1): number => middle + side * way;
