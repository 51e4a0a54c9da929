import type { Point } from '../model/lab.ts';
import type { PixelSize } from '../model/reference.ts';
import { shrinkSlots } from './shrink-slots.ts';

/** One connected shape: its innermost place and its size, both in shares of the picture. */
export interface ShapePlace {
  readonly place: Point;
  readonly share: number;
}

/** Long side of the map shapes are looked for in, px: fine enough for what is among the largest. */
const searchedPx = 320;

interface Shape {
  readonly pixels: readonly number[];
}

/** Connected areas (by sides) of one kind; kinds below 0 are none. */
function shapesOf(kinds: Int16Array, { width, height }: PixelSize): Shape[] {
  const seen = new Uint8Array(kinds.length);
  const shapes: Shape[] = [];
  for (let start = 0; start < kinds.length; start++) {
    if (seen[start] || (kinds[start] as number) < 0) continue;
    const pixels = [start];
    seen[start] = 1;
    for (let n = 0; n < pixels.length; n++) {
      const at = pixels[n] as number;
      const x = at % width;
      const nearby = [
        x > 0 ? at - 1 : -1,
        x < width - 1 ? at + 1 : -1,
        at - width,
        at + width < width * height ? at + width : -1,
      ];
      for (const next of nearby) {
        if (next < 0 || seen[next] || kinds[next] !== kinds[start]) continue;
        seen[next] = 1;
        pixels.push(next);
      }
    }
    shapes.push({ pixels });
  }
  return shapes;
}

/** The pixel of a shape that is farthest from its border, by peeling; the picture's rim is a border too. */
function innermost({ pixels }: Shape, { width, height }: PixelSize): number {
  const inside = new Set(pixels);
  let left = pixels;
  let last = pixels;
  while (left.length > 0) {
    last = left;
    left = left.filter((at) => {
      const x = at % width;
      if (x === 0 || x === width - 1 || at < width || at >= width * (height - 1)) return false;
      return [at - 1, at + 1, at - width, at + width].every((next) => inside.has(next));
    });
    inside.clear();
    for (const at of left) inside.add(at);
  }
  return last[Math.floor(last.length / 2)] as number;
}

/**
 * The largest connected shapes of a slot map, largest first, at most `most`. `kindOf` says for a slot which shapes
 * it belongs to: neighbours of one kind are one shape; below 0 it belongs to none.
 */
export function largestShapes(
  slotMap: Uint8Array,
  size: PixelSize,
  kindOf: (slot: number) => number,
  most: number,
): ShapePlace[] {
  const small = shrinkSlots(slotMap, size.width, size.height, searchedPx);
  const known = Int16Array.from({ length: 256 }, (_, slot) => kindOf(slot));
  const kinds = Int16Array.from(small.slotMap, (slot) => known[slot] as number);
  return shapesOf(kinds, small)
    .sort((one, two) => two.pixels.length - one.pixels.length)
    .slice(0, most)
    .map((shape) => {
      const at = innermost(shape, small);
      const x = ((at % small.width) + 0.5) / small.width;
      const y = (Math.floor(at / small.width) + 0.5) / small.height;
      return { place: [x, y], share: shape.pixels.length / kinds.length };
    });
}
