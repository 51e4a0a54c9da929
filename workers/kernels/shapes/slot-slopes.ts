import type { Point } from '../../../app/model/lab.ts';
import type { PixelSize } from '../../../app/model/pixel-size.ts';
import { sideTowards } from '../../../app/model/side.ts';
import type { SlotSlope } from '../../../app/model/slot.ts';

/** Where a slot lies and how its lightness slopes. */
export interface SlotLie {
  /** Mean place of its pixels, 0..1 from the left and from the top. */
  readonly centre: Point;
  readonly slope?: SlotSlope;
}

/** Rows between two moments at which others may have their turn. */
const rowsPerPiece = 256;
/** n, sums of x, y, xx, xy, yy, l, ll, lx, ly. */
const sumsPerSlot = 10;
/** Bins of `lightnessMap` to one L*. */
const binsPerLightness = 2.55;
/** A slope under this is none, L*. */
const leastSlope = 1;

/** 1 + 4 + 9 + ... + k^2. */
const squaresUpTo = (k: number): number => (k * (k + 1) * (2 * k + 1)) / 6;

/** The plane fitted to a slot's lightness by least squares, from its sums; null where there is none. */
function planeOf(sums: Float64Array, at: number): SlotSlope | null {
  const sum = (i: number): number => sums[at + i] as number;
  const n = sum(0);
  const [x, y, l] = [sum(1) / n, sum(2) / n, sum(6) / n];
  const xx = sum(3) / n - x * x;
  const xy = sum(4) / n - x * y;
  const yy = sum(5) / n - y * y;
  const ll = sum(7) / n - l * l;
  const lx = sum(8) / n - l * x;
  const ly = sum(9) / n - l * y;
  const det = xx * yy - xy * xy;
  // A row or a column of pixels, or next to one, has no slope across it.
  if (det < 1e-6 * (xx + yy) ** 2 || ll <= 0) return null;
  const gx = (yy * lx - xy * ly) / det;
  const gy = (xx * ly - xy * lx) / det;
  const onPlane = gx * lx + gy * ly;
  // An even spread has a range of sqrt(12) times its standard deviation.
  const lightness = Math.sqrt(12 * Math.max(0, onPlane)) / binsPerLightness;
  if (lightness < leastSlope) return null;
  return { lightness, towards: sideTowards(-gx, -gy), fit: Math.min(1, onPlane / ll) };
}

/**
 * Centre and slope of every slot. `slotMap`: slot of every pixel, 0..slotCount-1; `lightnessMap`:
 * simplified lightness, round(L* x 2.55); both of `size`, row by row. Sums stay whole and under 2^53:
 * 4 million pixels x 2000 x 2000. Ordinary least squares, common practice.
 */
export function* slotSlopes(
  slotMap: Uint8Array,
  lightnessMap: Uint8Array,
  { width, height }: PixelSize,
  slotCount: number,
): Generator<void, SlotLie[]> {
  const sums = new Float64Array(slotCount * sumsPerSlot);
  const add = (at: number, i: number, value: number): void => {
    sums[at + i] = (sums[at + i] as number) + value;
  };
  for (let y = 0; y < height; y++) {
    const row = y * width;
    // By runs of one slot: only what depends on lightness is summed pixel by pixel.
    for (let from = 0, to = 0; from < width; from = to) {
      const slot = slotMap[row + from] as number;
      let l = 0;
      let ll = 0;
      let lx = 0;
      for (to = from; to < width && slotMap[row + to] === slot; to++) {
        const own = lightnessMap[row + to] as number;
        l += own;
        ll += own * own;
        lx += own * to;
      }
      const at = slot * sumsPerSlot;
      const n = to - from;
      const x = (n * (from + to - 1)) / 2;
      const xx = squaresUpTo(to - 1) - squaresUpTo(from - 1);
      add(at, 0, n);
      add(at, 1, x);
      add(at, 2, n * y);
      add(at, 3, xx);
      add(at, 4, x * y);
      add(at, 5, n * y * y);
      add(at, 6, l);
      add(at, 7, ll);
      add(at, 8, lx);
      add(at, 9, l * y);
    }
    if (y % rowsPerPiece === rowsPerPiece - 1) yield;
  }
  return Array.from({ length: slotCount }, (_, slot): SlotLie => {
    const at = slot * sumsPerSlot;
    const n = Math.max(1, sums[at] as number);
    const slope = planeOf(sums, at);
    return {
      centre: [
        ((sums[at + 1] as number) / n + 0.5) / width,
        ((sums[at + 2] as number) / n + 0.5) / height,
      ],
      ...(slope && { slope }),
    };
  });
}
