import type { PixelSize } from '../../../app/model/reference.ts';

/** Half the window the direction of a border is read from, px. */
const window = 4;

/**
 * Unit normal of the border between slots `one` and `other` at a place, pointing from one to the
 * other: from the centre of what belongs to the one to the centre of what belongs to the other
 * within a small window. Writes into `normal`; falls back to [dx, dy], the step between the pixels.
 */
export function borderNormal(
  slots: Uint8Array,
  { width, height }: PixelSize,
  x: number,
  y: number,
  dx: number,
  dy: number,
  normal: Float64Array,
): void {
  const one = slots[y * width + x];
  const other = slots[(y + dy) * width + x + dx];
  let toX = 0;
  let toY = 0;
  for (let v = -window; v <= window + dy; v++) {
    const row = y + v;
    if (row < 0 || row >= height) continue;
    for (let u = -window; u <= window + dx; u++) {
      const column = x + u;
      if (column < 0 || column >= width) continue;
      const slot = slots[row * width + column];
      const sign = slot === other ? 1 : slot === one ? -1 : 0;
      toX += sign * (u - dx / 2);
      toY += sign * (v - dy / 2);
    }
  }
  const length = Math.hypot(toX, toY);
  const wrongWay = toX * dx + toY * dy <= 0;
  normal[0] = length === 0 || wrongWay ? dx : toX / length;
  normal[1] = length === 0 || wrongWay ? dy : toY / length;
}
