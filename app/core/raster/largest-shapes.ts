import type { Point } from '../colour/lab.ts';
import { shrinkSlots } from './paint-slots.ts';
import type { PixelSize } from './size.ts';

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
function shapesOf(kinds: Int16Array, { width }: PixelSize): Shape[] {
  const seen = new Uint8Array(kinds.length);
  const shapes: Shape[] = [];
  for (let start = 0; start < kinds.length; start++) {
    const kind = kinds[start];
    if (seen[start] === 1 || kind < 0) continue;
    const pixels = [start];
    seen[start] = 1;
    const offer = (next: number): void => {
      if (seen[next] === 1 || kinds[next] !== kind) return;
      seen[next] = 1;
      pixels.push(next);
    };
    for (let n = 0; n < pixels.length; n++) {
      const at = pixels[n];
      const x = at % width;
      if (x > 0) offer(at - 1);
      if (x < width - 1) offer(at + 1);
      if (at >= width) offer(at - width);
      if (at + width < kinds.length) offer(at + width);
    }
    shapes.push({ pixels });
  }
  return shapes;
}

/**
 * Steps (by sides) from every pixel to the nearest one of another kind or beyond the rim, in two passes.
 * Rosenfeld and Pfaltz (1966), J. ACM 13, 471-494.
 */
function stepsInside(kinds: Int16Array, { width }: PixelSize): Uint16Array {
  const steps = new Uint16Array(kinds.length);
  const from = (at: number, next: number, there: boolean): number =>
    there && kinds[next] === kinds[at] ? steps[next] + 1 : 1;
  for (let at = 0; at < kinds.length; at++) {
    const x = at % width;
    steps[at] = Math.min(from(at, at - 1, x > 0), from(at, at - width, at >= width));
  }
  for (let at = kinds.length - 1; at >= 0; at--) {
    const x = at % width;
    const later = Math.min(
      from(at, at + 1, x < width - 1),
      from(at, at + width, at + width < kinds.length),
    );
    steps[at] = Math.min(steps[at], later);
  }
  return steps;
}

/** The pixel of a shape that is farthest from its border; of several the middle one. */
function innermost({ pixels }: Shape, steps: Uint16Array): number {
  const most = pixels.reduce((far, at) => Math.max(far, steps[at]), 0);
  const deepest = pixels.filter((at) => steps[at] === most);
  return deepest[Math.floor(deepest.length / 2)];
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
  const kinds = Int16Array.from(small.slotMap, (slot) => known[slot]);
  const steps = stepsInside(kinds, small);
  return shapesOf(kinds, small)
    .sort((one, two) => two.pixels.length - one.pixels.length)
    .slice(0, most)
    .map((shape) => {
      const at = innermost(shape, steps);
      const x = ((at % small.width) + 0.5) / small.width;
      const y = (Math.floor(at / small.width) + 0.5) / small.height;
      return { place: [x, y], share: shape.pixels.length / kinds.length };
    });
}
