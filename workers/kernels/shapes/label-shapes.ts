import type { PixelSize } from '../../../app/model/reference.ts';

/** Connected shapes of a map: every pixel's shape, and kind and size of each shape. */
export interface Labels {
  /** Shape of every pixel, counted from 0 in the order the picture is read. */
  readonly labels: Int32Array;
  readonly kinds: Uint8Array;
  readonly areasPx: Int32Array;
}

/** The first pixel of i's shape so far; halves the way for whoever asks next. */
function first(parents: Int32Array, i: number): number {
  let at = i;
  let parent = parents[at] as number;
  while (parent !== at) {
    const above = parents[parent] as number;
    parents[at] = above;
    at = above;
    parent = parents[at] as number;
  }
  return at;
}

/** Points every pixel at an earlier one of its shape; a shape's first pixel points at itself. */
function* linked(map: Uint8Array, { width, height }: PixelSize): Generator<void, Int32Array> {
  const parents = new Int32Array(map.length);
  for (let y = 0; y < height; y++) {
    for (let x = 0, i = y * width; x < width; x++, i++) {
      const kind = map[i];
      const left = x > 0 && map[i - 1] === kind;
      const above = y > 0 && map[i - width] === kind;
      if (!above) {
        parents[i] = left ? (parents[i - 1] as number) : i;
        continue;
      }
      if (!left || map[i - width - 1] === kind) {
        parents[i] = parents[i - width] as number;
        continue;
      }
      const one = first(parents, i - 1);
      const other = first(parents, i - width);
      const least = Math.min(one, other);
      parents[Math.max(one, other)] = least;
      parents[i] = least;
    }
    if (y % 512 === 511) yield;
  }
  return parents;
}

/** Connected shapes (by the four sides) of pixels of one kind. Hands back control now and then. */
export function* labelShapes(map: Uint8Array, size: PixelSize): Generator<void, Labels> {
  const labels = yield* linked(map, size);
  let count = 0;
  // A parent comes before its pixel, so it holds its shape's number already.
  for (let i = 0; i < labels.length; i++) {
    const parent = labels[i] as number;
    labels[i] = parent === i ? count++ : (labels[parent] as number);
  }
  yield;
  const kinds = new Uint8Array(count);
  const areasPx = new Int32Array(count);
  for (let i = 0; i < labels.length; i++) {
    const label = labels[i] as number;
    kinds[label] = map[i] as number;
    areasPx[label] = (areasPx[label] as number) + 1;
  }
  return { labels, kinds, areasPx };
}
