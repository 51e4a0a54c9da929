import type { Point } from './lab.ts';
import type { Crop } from './reference.ts';

/** Photo's width and height in units of the photo's height, and the turn's cosine and sine. */
function frameOf({ size, turn }: Crop, cutShape: number) {
  const angle = (turn * Math.PI) / 180;
  return {
    width: (cutShape * size[1]) / size[0],
    cos: Math.cos(angle),
    sin: Math.sin(angle),
  };
}

/**
 * Where a place of the upright photo lies in the cut-out, 0..1 of its width and height; outside of
 * that where it was cut away. `cutShape` is the cut-out's width over its height.
 */
export function pointInCut([x, y]: Point, crop: Crop, cutShape: number): Point {
  const { width, cos, sin } = frameOf(crop, cutShape);
  const right = (x - crop.centre[0]) * width;
  const down = y - crop.centre[1];
  return [
    0.5 + (cos * right - sin * down) / (crop.size[0] * width),
    0.5 + (sin * right + cos * down) / crop.size[1],
  ];
}

/** The way back: where a place of the cut-out lies in the upright photo, 0..1. */
export function pointInPhoto([x, y]: Point, crop: Crop, cutShape: number): Point {
  const { width, cos, sin } = frameOf(crop, cutShape);
  const right = (x - 0.5) * crop.size[0] * width;
  const down = (y - 0.5) * crop.size[1];
  return [
    crop.centre[0] + (cos * right + sin * down) / width,
    crop.centre[1] + (cos * down - sin * right),
  ];
}

/** The cut-out's long side as a share of the photo's. */
export function longSideShare({ size }: Crop, cutShape: number): number {
  const width = (cutShape * size[1]) / size[0];
  return (Math.max(cutShape, 1) * size[1]) / Math.max(width, 1);
}
