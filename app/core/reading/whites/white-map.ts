import type { PixelSize } from '../../raster/size.ts';
import type { White } from './whites.ts';

/**
 * Which white every pixel belongs to: 0 for none, else 1 more than its index in `whites`. Each is
 * flooded from its own place over all slots that stay white; `isWhite` by slot.
 */
export function whiteMap(
  slotMap: Uint8Array,
  { width, height }: PixelSize,
  isWhite: readonly boolean[],
  whites: readonly Pick<White, 'at'>[],
): Uint16Array {
  const map = new Uint16Array(slotMap.length);
  const open = Uint8Array.from({ length: 256 }, (_, slot) => (isWhite[slot] ? 1 : 0));
  const isFree = (i: number): boolean => map[i] === 0 && open[slotMap[i]] === 1;
  whites.forEach(({ at }, index) => {
    const waiting = [Math.floor(at[1] * height) * width + Math.floor(at[0] * width)];
    for (let i = waiting.pop(); i !== undefined; i = waiting.pop()) {
      if (!isFree(i)) continue;
      const row = i - (i % width);
      let from = i;
      let to = i + 1;
      while (from > row && isFree(from - 1)) from--;
      while (to < row + width && isFree(to)) to++;
      map.fill(index + 1, from, to);
      for (const beside of [-width, width]) {
        if (row + beside < 0 || row + beside >= map.length) continue;
        let before = false;
        for (let j = from + beside; j < to + beside; j++) {
          const free = map[j] === 0 && open[slotMap[j]] === 1;
          // One place of every stretch beside is enough.
          if (free && !before) waiting.push(j);
          before = free;
        }
      }
    }
  });
  return map;
}

/** The index of the white at a place (0..1), or of the nearest within `reach` (share of the long side); -1 for none. */
export function whiteAt(
  map: Uint16Array,
  { width, height }: PixelSize,
  [x, y]: readonly [number, number],
  reach = 0.03,
): number {
  const [column, row] = [Math.floor(x * width), Math.floor(y * height)];
  const far = Math.ceil(reach * Math.max(width, height));
  let found = 0;
  let least = far * far + 1;
  for (let j = Math.max(0, row - far); j <= Math.min(height - 1, row + far); j++) {
    for (let i = Math.max(0, column - far); i <= Math.min(width - 1, column + far); i++) {
      const away = (i - column) ** 2 + (j - row) ** 2;
      const white = map[j * width + i];
      if (white === 0 || away >= least) continue;
      found = white;
      least = away;
    }
  }
  return found - 1;
}
