import { smallestShapeMm } from '../limits.ts';
import { shortSide } from '../raster/sides.ts';
import type { PixelSize } from '../raster/size.ts';
import type { Reading } from '../reading/reading.ts';
import type { Slot } from '../reading/slot.ts';

/** Connected shapes of a slot map; whites that touch are one shape whatever their slots. */
interface OutlineShapes {
  /** Shape of every pixel, row by row, counted from 0 in the order the picture is read. */
  readonly labels: Int32Array;
  readonly areasPx: readonly number[];
  /** Length of each shape's outline, px: pixel sides times pi / 4, right on average over directions. */
  readonly outlinesPx: readonly number[];
  /** Slot of each shape; of a white, that of its first pixel. */
  readonly slots: readonly number[];
}

const sameWhite = 255;

/** Connected by their four sides. `slotMap` holds an index into `slots` for every pixel. */
export function outlineShapes(
  slotMap: Uint8Array,
  slots: readonly Pick<Slot, 'reserve'>[],
  { width, height }: PixelSize,
): OutlineShapes {
  const kinds = Uint8Array.from({ length: 256 }, (_, i) => (slots[i]?.reserve ? sameWhite : i));
  const labels = new Int32Array(slotMap.length).fill(-1);
  const waiting = new Int32Array(slotMap.length);
  const areasPx: number[] = [];
  const outlinesPx: number[] = [];
  const found: number[] = [];
  for (let start = 0; start < labels.length; start++) {
    if (labels[start] !== -1) continue;
    const label = areasPx.length;
    const kind = kinds[slotMap[start]];
    let count = 0;
    labels[start] = label;
    waiting[count++] = start;
    let area = 0;
    let sides = 0;
    const take = (pixel: number): void => {
      if (kinds[slotMap[pixel]] !== kind) sides++;
      else if (labels[pixel] === -1) {
        labels[pixel] = label;
        waiting[count++] = pixel;
      }
    };
    while (count > 0) {
      const pixel = waiting[--count];
      area++;
      const x = pixel % width;
      if (x > 0) take(pixel - 1);
      else sides++;
      if (x < width - 1) take(pixel + 1);
      else sides++;
      if (pixel >= width) take(pixel - width);
      else sides++;
      if (pixel < width * (height - 1)) take(pixel + width);
      else sides++;
    }
    areasPx.push(area);
    outlinesPx.push((sides * Math.PI) / 4);
    found.push(slotMap[start]);
  }
  return { labels, areasPx, outlinesPx, slots: found };
}

/** A strip between two shapes that is narrower than this is not drawn by two lines, mm (own proposal). */
const leastStripMm = 3;

/**
 * Least area of a shape that is drawn, px: whites to the smallest sparkle, accents as small as a dark
 * can be painted, all else as the first wash has it, narrow strips not at all. A white that comes back
 * at the end is not drawn either.
 */
export function leastAreas(
  { labels, areasPx, outlinesPx, slots: shapes }: OutlineShapes,
  { slots, whites = [], raster, sheet }: Reading,
  smallest: { readonly firstWash: number; readonly darks: number },
): number[] {
  const pxPerMm = Math.sqrt((raster.width * raster.height) / (sheet.widthMm * sheet.heightMm));
  const px = (mm: number): number => (mm * pxPerMm) ** 2;
  const darkest = Math.max(0, ...slots.map(({ band, reserve }) => (reserve ? 0 : band)));
  const least = shapes.map((slot, shape) => {
    if (slots[slot]?.reserve) return px(smallestShapeMm.details);
    if (slots[slot]?.band === darkest) return px(smallest.darks);
    const narrow = shortSide(areasPx[shape], outlinesPx[shape]);
    return narrow < leastStripMm * pxPerMm ? Number.POSITIVE_INFINITY : px(smallest.firstWash);
  });
  for (const { at, way } of whites) {
    if (way !== 'last') continue;
    const [x, y] = [Math.floor(at[0] * raster.width), Math.floor(at[1] * raster.height)];
    const label = labels[y * raster.width + x];
    if (label !== undefined && shapes[label] !== undefined) least[label] = Number.POSITIVE_INFINITY;
  }
  return least;
}

/** Steps of value in which neighbours are compared, L*: within a step the longer border decides. */
const valueStep = 4;

/** How many pixel sides every two shapes share. */
function sharedSides({ labels, areasPx }: OutlineShapes, { width, height }: PixelSize) {
  const shared = areasPx.map(() => new Map<number, number>());
  const meet = (one: number, other: number): void => {
    if (one === other) return;
    const [of, at] = [shared[one], shared[other]];
    of.set(other, (of.get(other) ?? 0) + 1);
    at.set(one, (at.get(one) ?? 0) + 1);
  };
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const label = labels[i];
      if (x + 1 < width) meet(label, labels[i + 1]);
      if (y + 1 < height) meet(label, labels[i + width]);
    }
  }
  return shared;
}

/**
 * The shape that each one is part of once those smaller than their `leastPx` have gone, smallest first,
 * to the neighbour nearest in planned value, never over the line of the subject.
 */
export function joinSmallShapes(
  shapes: OutlineShapes,
  slots: readonly Slot[],
  size: PixelSize,
  leastPx: readonly number[],
): number[] {
  const { areasPx, slots: slotOf } = shapes;
  const into = areasPx.map((_, i) => i);
  const area = [...areasPx];
  const shared = sharedSides(shapes, size);
  const whole = (shape: number): number => {
    let at = shape;
    while (into[at] !== at) at = into[at];
    return at;
  };
  const slot = (shape: number): Slot | undefined => slots[slotOf[shape]];

  function nearest(shape: number): number {
    const own = slot(shape);
    const near = new Map<number, number>();
    for (const [other, sides] of shared[shape] ?? []) {
      const root = whole(other);
      if (root !== shape) near.set(root, (near.get(root) ?? 0) + sides);
    }
    shared[shape] = near;
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    let longest = 0;
    for (const [other, sides] of near) {
      const beside = slot(other);
      if (!own || !beside || own.passage !== beside.passage) continue;
      // What is smaller and kept, a sparkle or an accent, does not grow by what surrounds it.
      if (area[other] < area[shape]) continue;
      const away = Math.round(Math.abs(own.target[0] - beside.target[0]) / valueStep);
      if (away > least || (away === least && sides <= longest)) continue;
      [best, least, longest] = [other, away, sides];
    }
    return best;
  }

  let small = into.filter((i) => area[i] < leastPx[i]);
  while (small.length > 0) {
    small.sort((one, other) => area[one] - area[other] || one - other);
    let joined = 0;
    for (const shape of small) {
      if (into[shape] !== shape || area[shape] >= leastPx[shape]) continue;
      const to = nearest(shape);
      if (to === -1) continue;
      into[shape] = to;
      area[to] = area[to] + area[shape];
      const kept = shared[to];
      for (const [other, sides] of shared[shape]) kept.set(other, (kept.get(other) ?? 0) + sides);
      joined++;
    }
    if (joined === 0) break;
    small = small.filter((i) => into[i] === i && area[i] < leastPx[i]);
  }
  return into.map((_, i) => whole(i));
}
