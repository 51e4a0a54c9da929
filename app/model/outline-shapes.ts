import { smallestShapeMm } from './limits.ts';
import type { PixelSize } from './pixel-size.ts';
import type { Reading } from './reading.ts';
import { shortSide } from './short-side.ts';
import type { Slot } from './slot.ts';

/** Connected shapes of a slot map; whites that touch are one shape whatever their slots. */
export interface OutlineShapes {
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
    const kind = kinds[slotMap[start] as number];
    let count = 0;
    labels[start] = label;
    waiting[count++] = start;
    let area = 0;
    let sides = 0;
    const take = (pixel: number): void => {
      if (kinds[slotMap[pixel] as number] !== kind) sides++;
      else if (labels[pixel] === -1) {
        labels[pixel] = label;
        waiting[count++] = pixel;
      }
    };
    while (count > 0) {
      const pixel = waiting[--count] as number;
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
    found.push(slotMap[start] as number);
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
    const narrow = shortSide(areasPx[shape] as number, outlinesPx[shape] as number);
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
