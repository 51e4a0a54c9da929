import { runToEnd } from '../../numeric/run-to-end.ts';
import { labelRuns, shapeAt } from '../../raster/label-shapes.ts';
import type { PixelSize } from '../../raster/size.ts';
import type { White } from './whites.ts';

/**
 * Which white every pixel belongs to: 0 for none, else 1 more than its index in `whites`. A white is the
 * connected area round its place over all slots that stay white; `isWhite` by slot.
 */
export function whiteMap(
  slotMap: Uint8Array,
  size: PixelSize,
  isWhite: readonly boolean[],
  whites: readonly Pick<White, 'at'>[],
): Uint16Array {
  const { width, height } = size;
  const table = Uint8Array.from({ length: 256 }, (_, slot) => (isWhite[slot] ? 1 : 0));
  const labels = runToEnd(
    labelRuns(
      slotMap.map((slot) => table[slot]),
      size,
    ),
  );
  const { runs, shapes, kinds } = labels;
  const numbers = new Uint16Array(kinds.length);
  whites.forEach(({ at: [x, y] }, index) => {
    const shape = shapeAt(labels, size, Math.floor(y * height) * width + Math.floor(x * width));
    if (kinds[shape] === 1 && numbers[shape] === 0) numbers[shape] = index + 1;
  });
  const map = new Uint16Array(slotMap.length);
  for (let run = 0; run < shapes.length; run++) {
    map.fill(numbers[shapes[run]], runs.starts[run], runs.starts[run + 1]);
  }
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
