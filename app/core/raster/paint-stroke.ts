import type { Point } from '../colour/lab.ts';
import type { PixelSize } from './size.ts';

/** Nearer to the picture's border than this, a circle is taken to go round outside of it. */
const snap = 0.02;

const snapped = (share: number): number => {
  if (share < snap) return Math.min(share, -0.05);
  if (share > 1 - snap) return Math.max(share, 1.05);
  return share;
};

/** 1 for every cell whose centre lies inside the closed stroke, however often it winds round. */
export function insideStroke(path: readonly Point[], { width, height }: PixelSize): Uint8Array {
  const area = new Uint8Array(width * height);
  const points = path.map(([x, y]) => [snapped(x) * width, snapped(y) * height] as const);
  for (let row = 0; row < height; row++) {
    const y = row + 0.5;
    const crossings: { x: number; way: number }[] = [];
    points.forEach(([x1, y1], i) => {
      const [x0, y0] = points.at(i - 1) ?? [x1, y1];
      if (y0 <= y === y1 <= y) return;
      crossings.push({ x: x0 + ((y - y0) / (y1 - y0)) * (x1 - x0), way: y1 > y0 ? 1 : -1 });
    });
    crossings.sort((one, other) => one.x - other.x);
    let winding = 0;
    crossings.forEach(({ x, way }, i) => {
      winding += way;
      const next = crossings[i + 1];
      if (winding === 0 || !next) return;
      const from = Math.max(0, Math.ceil(x - 0.5));
      const to = Math.min(width, Math.ceil(next.x - 0.5));
      if (to > from) area.fill(1, row * width + from, row * width + to);
    });
  }
  return area;
}

/** Writes `value` into every cell within `radius` cells of the stroke. */
export function paintStroke(
  area: Uint8Array,
  { width, height }: PixelSize,
  path: readonly Point[],
  radius: number,
  value: number,
): void {
  path.forEach(([shareX, shareY], i) => {
    const [beforeX, beforeY] = path[i - 1] ?? [shareX, shareY];
    const [x0, y0] = [beforeX * width - 0.5, beforeY * height - 0.5];
    const [dx, dy] = [shareX * width - 0.5 - x0, shareY * height - 0.5 - y0];
    const length = dx * dx + dy * dy;
    const top = Math.max(0, Math.ceil(Math.min(y0, y0 + dy) - radius));
    const bottom = Math.min(height - 1, Math.floor(Math.max(y0, y0 + dy) + radius));
    const left = Math.max(0, Math.ceil(Math.min(x0, x0 + dx) - radius));
    const right = Math.min(width - 1, Math.floor(Math.max(x0, x0 + dx) + radius));
    for (let y = top; y <= bottom; y++) {
      for (let x = left; x <= right; x++) {
        const along = length > 0 ? ((x - x0) * dx + (y - y0) * dy) / length : 0;
        const t = Math.max(0, Math.min(1, along));
        const [offX, offY] = [x - x0 - t * dx, y - y0 - t * dy];
        if (offX * offX + offY * offY <= radius * radius) area[y * width + x] = value;
      }
    }
  });
}
