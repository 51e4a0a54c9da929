import type { Edge } from './edge.ts';
import type { PixelSize } from './pixel-size.ts';

/** Looked at in this many places along an edge at most ... */
const places = 9;
/** ... and at these distances to either side, px: the line lies within a pixel of the true contour. */
const distances = [0.6, 1.2, 1.8, 2.5, 3.5];

const mostSeen = (seen: ReadonlyMap<number, number>): number | undefined =>
  [...seen].sort(([, one], [, other]) => other - one)[0]?.[0];

/** The shapes that meet along an edge, that of slot a first; null where they can't be told. */
export function shapesBeside(
  { a, b, path }: Pick<Edge, 'a' | 'b' | 'path'>,
  slotMap: Uint8Array,
  labels: Int32Array,
  { width, height }: PixelSize,
): readonly [number, number] | null {
  const seenA = new Map<number, number>();
  const seenB = new Map<number, number>();
  const step = Math.max(1, Math.floor((path.length - 1) / places));
  for (let n = 1; n < path.length; n += step) {
    const [fromX, fromY] = path[n - 1] as readonly [number, number];
    const [toX, toY] = path[n] as readonly [number, number];
    const [x, y] = [((fromX + toX) / 2) * width, ((fromY + toY) / 2) * height];
    const [dx, dy] = [(toX - fromX) * width, (toY - fromY) * height];
    const long = Math.hypot(dx, dy) || 1;
    for (const side of [1, -1]) {
      for (const away of distances) {
        const column = Math.floor(x - (side * away * dy) / long);
        const row = Math.floor(y + (side * away * dx) / long);
        if (column < 0 || row < 0 || column >= width || row >= height) continue;
        const pixel = row * width + column;
        const seen = slotMap[pixel] === a ? seenA : slotMap[pixel] === b ? seenB : null;
        const label = labels[pixel] as number;
        if (seen) seen.set(label, (seen.get(label) ?? 0) + 1);
      }
    }
  }
  const [one, other] = [mostSeen(seenA), mostSeen(seenB)];
  return one === undefined || other === undefined ? null : [one, other];
}
