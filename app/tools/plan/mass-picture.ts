import { washMasses } from '../../../workers/kernels/shapes/masses-of.ts';
import { paintSlots } from '../../drawing/paint-slots.ts';
import { type MassWash, massSizes } from '../../model/masses.ts';
import type { Reading } from '../../model/reading.ts';

/** Outlines by wash, px: the big shapes of the first wash thick, the darks fine. */
const outlines: readonly (readonly [MassWash, number])[] = [
  ['darks', 1],
  ['second', 3],
  ['firstWash', 5],
];

function washMap(reading: Reading, slotMap: Uint8Array, wash: MassWash): Uint8Array {
  const { raster, sheet, slots } = reading;
  const pxPerMm = Math.sqrt((raster.width * raster.height) / (sheet.widthMm * sheet.heightMm));
  const pieces = washMasses(slotMap, slots, raster, pxPerMm, wash, massSizes);
  for (;;) {
    const piece = pieces.next();
    if (piece.done) return piece.value.map;
  }
}

/** Blackens a square of `side` px about every place where a map changes. */
function outline(map: Uint8Array, rgba: Uint8ClampedArray, side: number, size: Reading['raster']) {
  const { width, height } = size;
  const reach = side >> 1;
  const blacken = (x: number, y: number): void => {
    for (let v = Math.max(0, y - reach); v <= Math.min(height - 1, y + reach); v++) {
      const row = v * width;
      const from = 4 * (row + Math.max(0, x - reach));
      const to = 4 * (row + Math.min(width - 1, x + reach));
      for (let at = from; at <= to; at += 4) rgba.fill(0, at, at + 3);
    }
  };
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const right = x + 1 < width && map[i + 1] !== map[i];
      const below = y + 1 < height && map[i + width] !== map[i];
      if (right || below) blacken(x, y);
    }
  }
}

/** RGBA of the shapes of every wash: outlines over the slots' planned values, these paled by half. */
export function massPicture(reading: Reading, slotMap: Uint8Array): Uint8ClampedArray {
  const greys = new Uint8ClampedArray(
    reading.slots.flatMap(({ target }) => new Array<number>(3).fill(127 + 1.28 * target[0])),
  );
  const rgba = new Uint8ClampedArray(slotMap.length * 4);
  paintSlots(slotMap, greys, rgba);
  for (const [wash, side] of outlines) {
    outline(washMap(reading, slotMap, wash), rgba, side, reading.raster);
  }
  return rgba;
}
