import type { Edge } from '../../../app/model/edge.ts';
import type { PixelSize } from '../../../app/model/pixel-size.ts';
import { areaAt, type WhiteAreas } from './white-areas.ts';

/** How far beside a simplified line its shape is looked for, px. */
const reach = 3;

/** The pixel nearest to a place of the line that belongs to a slot; -1 where none is within reach. */
function pixelOf(
  slotMap: Uint8Array,
  { width, height }: PixelSize,
  slot: number,
  x: number,
  y: number,
): number {
  let found = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let row = Math.floor(y - reach); row <= y + reach; row++) {
    if (row < 0 || row >= height) continue;
    for (let column = Math.floor(x - reach); column <= x + reach; column++) {
      if (column < 0 || column >= width || slotMap[row * width + column] !== slot) continue;
      const away = (column + 0.5 - x) ** 2 + (row + 0.5 - y) ** 2;
      if (away >= least) continue;
      least = away;
      found = row * width + column;
    }
  }
  return found;
}

/**
 * Share of every area's outline that is soft or lost, 0..1 by length, from the edges between what
 * stays white and what does not; 0 where no edge of it was long enough to be measured.
 */
export function softOutlines(
  areas: WhiteAreas,
  slotMap: Uint8Array,
  isWhite: readonly boolean[],
  edges: readonly Edge[],
  size: PixelSize,
): Float64Array {
  const count = areas.labels.kinds.length;
  const soft = new Float64Array(count);
  const all = new Float64Array(count);
  for (const { a, b, kind, lengthMm, path } of edges) {
    if (isWhite[a] === isWhite[b]) continue;
    // One edge runs along one shape: its middle tells which.
    const [x0, y0] = path[Math.floor((path.length - 1) / 2)] ?? [0, 0];
    const [x1, y1] = path[Math.ceil((path.length - 1) / 2)] ?? [0, 0];
    const [x, y] = [((x0 + x1) / 2) * size.width, ((y0 + y1) / 2) * size.height];
    const pixel = pixelOf(slotMap, size, isWhite[a] ? a : b, x, y);
    if (pixel < 0) continue;
    const area = areaAt(areas, size, pixel);
    all[area] = (all[area] as number) + lengthMm;
    if (kind === 'soft' || kind === 'lost') soft[area] = (soft[area] as number) + lengthMm;
  }
  return soft.map((length, i) => (length > 0 ? length / (all[i] as number) : 0));
}
