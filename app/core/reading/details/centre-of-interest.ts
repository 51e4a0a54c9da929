import type { Point } from '../../colour/lab.ts';
import type { PixelSize } from '../../raster/size.ts';

/** Nearness where nothing says where attention gathers (own). */
const noCentre = 0.6;
/** No place counts less than this (own). */
const leastNear = 0.3;
/** Outside, nearness falls to 1/e within this part of the picture's diagonal (own). */
const fall = 0.3;

interface Round {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Middle of a mask's pixels and the radius of a circle as large, px; null where it is empty. */
function roundOfMask(mask: Uint8Array, width: number): Round | null {
  let [count, x, y] = [0, 0, 0];
  for (let i = 0; i < mask.length; i++) {
    if (mask[i] === 0) continue;
    count++;
    x += i % width;
    y += Math.floor(i / width);
  }
  return count === 0 ? null : { x: x / count, y: y / count, radius: Math.sqrt(count / Math.PI) };
}

/** Middle of a closed path, 0..1, and its mean distance to it, px; null where it has no points. */
function roundOfPath(path: readonly Point[], { width, height }: PixelSize): Round | null {
  if (path.length === 0) return null;
  const x = (path.reduce((sum, [u]) => sum + u, 0) / path.length) * width;
  const y = (path.reduce((sum, [, v]) => sum + v, 0) / path.length) * height;
  const radius =
    path.reduce((sum, [u, v]) => sum + Math.hypot(u * width - x, v * height - y), 0) / path.length;
  return { x, y, radius };
}

/**
 * How near a place of the picture, 0..1 of its width and height, is to the centre of interest, 0.3..1: 1 within the
 * subject, or within the circle round what stands out; the same everywhere where there is neither.
 */
export function interestIn(
  subject: Uint8Array | null,
  proposed: readonly Point[] | null,
  size: PixelSize,
): (x: number, y: number) => number {
  const round =
    (subject && roundOfMask(subject, size.width)) ?? (proposed && roundOfPath(proposed, size));
  if (!round) return () => noCentre;
  const reach = fall * Math.hypot(size.width, size.height);
  return (x, y) => {
    const away = Math.hypot(x * size.width - round.x, y * size.height - round.y) - round.radius;
    return Math.max(leastNear, Math.exp(-Math.max(0, away) / reach));
  };
}
