import { describe, expect, it } from 'vitest';
import { paintSquares, scaledGrid } from '../../../../app/core/raster/paint-squares.ts';
import { seeded } from '../../../support/seeded.ts';

/** Two squares of 4 px side by side, one slot; grey 100 in the first, 200 in the second. */
const grid = { across: 2, down: 1, sidePx: 4, slots: [0, 0], squares: [0, 1] };
const size = { width: 8, height: 4 };
const table = Uint8ClampedArray.of(100, 100, 100, 200, 200, 200);

const painted = (
  slotMap: Uint8Array,
  blend: Parameters<typeof paintSquares>[4] = null,
  rows: { grid: typeof grid; table: Uint8ClampedArray } = { grid, table },
): Uint8ClampedArray => {
  const out = new Uint8ClampedArray(4 * slotMap.length);
  paintSquares(slotMap, size, rows.grid, rows.table, blend, out);
  return out;
};

describe('colours that run between the middles of squares', () => {
  it('is flat outside the middles and straight between them', () => {
    const out = painted(new Uint8Array(32));
    const reds = Array.from({ length: 8 }, (_, x) => out[4 * x]);
    // Middles lie at 2 and 6 px: pixels 2 to 5 are 1/8, 3/8, 5/8, 7/8 of the way.
    expect(reds).toEqual([100, 100, 112, 138, 162, 188, 200, 200]);
    expect(out.every((byte, i) => i % 4 !== 3 || byte === 255)).toBe(true);
  });

  it('a slot is not coloured by its neighbour', () => {
    const slotMap = Uint8Array.from({ length: 32 }, (_, i) => (i % 8 < 4 ? 0 : 1));
    const two = { ...grid, slots: [0, 1] };
    const out = painted(slotMap, null, { grid: two, table });
    expect(Array.from({ length: 8 }, (_, x) => out[4 * x])).toEqual([
      100, 100, 100, 100, 200, 200, 200, 200,
    ]);
  });

  it('runs into the other slot at soft edges by the share of the blend', () => {
    const slotMap = Uint8Array.from({ length: 32 }, (_, i) => (i % 8 < 4 ? 0 : 1));
    const everywhere = { ...grid, slots: [0, 1, 1], squares: [0, 1, 0] };
    const blend = {
      pixels: Uint32Array.of(3),
      partners: Uint8Array.of(1),
      shares: Uint8Array.of(128),
    };
    const rows = { grid: everywhere, table: Uint8ClampedArray.of(...table, 200, 200, 200) };
    const out = painted(slotMap, blend, rows);
    expect(out[4 * 3]).toBe(150);
    expect(out[4 * 2]).toBe(100);
  });

  it('a soft edge takes the colour of a slot that ends a square before', () => {
    const slotMap = Uint8Array.from({ length: 32 }, (_, i) => (i % 8 < 4 ? 0 : 1));
    const apart = { ...grid, slots: [0, 1] }; // slot 1 has no row in the first square
    const blend = {
      pixels: Uint32Array.of(0),
      partners: Uint8Array.of(1),
      shares: Uint8Array.of(128),
    };
    const out = painted(slotMap, blend, { grid: apart, table });
    expect(out[0]).toBe(150);
  });

  it('what has no colour is white', () => {
    const out = painted(new Uint8Array(32).fill(7));
    expect([...out.subarray(0, 4)]).toEqual([255, 255, 255, 255]);
  });

  it('keeps its squares on a smaller picture', () => {
    expect(scaledGrid(grid, 0.5)).toEqual({ ...grid, sidePx: 2 });
  });
});

/** The colour of a slot at a pixel, from the four squares about it, one by one; null where none of them has any. */
function slowColour(
  { across, down, sidePx, slots, squares }: typeof grid,
  rowsOf: Uint8ClampedArray,
  slot: number,
  [x, y]: readonly [number, number],
): number[] | null {
  /** Row of a square: its own, or after so many rounds the last of those beside it. */
  const rowAt = (u: number, v: number, rounds: number): number => {
    if (u < 0 || v < 0 || u >= across || v >= down) return -1;
    const before = rounds > 0 ? rowAt(u, v, rounds - 1) : -1;
    if (before >= 0) return before;
    if (rounds === 0)
      return slots.reduce(
        (found, s, n) => (s === slot && squares[n] === v * across + u ? n : found),
        -1,
      );
    const beside = [rowAt(u - 1, v, rounds - 1), rowAt(u + 1, v, rounds - 1)];
    return Math.max(...beside, rowAt(u, v - 1, rounds - 1), rowAt(u, v + 1, rounds - 1));
  };
  const [px, py] = [(x + 0.5) / sidePx - 0.5, (y + 0.5) / sidePx - 0.5];
  const sum = [0, 0, 0];
  let all = 0;
  for (const [du, dv] of [
    [0, 0],
    [1, 0],
    [0, 1],
    [1, 1],
  ] as const) {
    const [u, v] = [Math.floor(px) + du, Math.floor(py) + dv];
    const weight = (1 - Math.abs(px - u)) * (1 - Math.abs(py - v));
    const within = (n: number, count: number): number => Math.min(count - 1, Math.max(0, n));
    const row = rowAt(within(u, across), within(v, down), 2);
    if (row < 0) continue;
    all += weight;
    for (let c = 0; c < 3; c++)
      sum[c] = (sum[c] as number) + weight * (rowsOf[3 * row + c] as number);
  }
  return all > 0 ? sum.map((n) => n / all) : null;
}

it.each([
  ['whole squares', 4, 6, 4],
  ['squares of a fraction of a pixel, the last of them cut', 3.4, 7, 5],
])('any map is painted as pixel by pixel, %s', (_, sidePx, across, down) => {
  const random = seeded(5);
  const [width, height] = [22, 15];
  const slotMap = Uint8Array.from(
    { length: width * height },
    (_, i) => Math.floor((i % width) / 5 + (random() < 0.1 ? 1 : 0)) % 4,
  );
  const cells: [slot: number, square: number][] = [];
  for (const slot of [0, 1, 3])
    for (let square = 0; square < across * down; square++)
      if (random() < 0.25) cells.push([slot, square]);
  const some = {
    ...{ across, down, sidePx, slots: cells.map(([slot]) => slot) },
    squares: cells.map(([, square]) => square),
  };
  const colours = Uint8ClampedArray.from({ length: 3 * cells.length }, () => 256 * random());
  const blended = Array.from({ length: 60 }, () => Math.floor(random() * width * height));
  const blend = {
    pixels: Uint32Array.from([...new Set(blended)]),
    partners: Uint8Array.from(new Set(blended), () => Math.floor(random() * 4)),
    shares: Uint8Array.from(new Set(blended), () => 1 + Math.floor(random() * 128)),
  };
  const out = new Uint8ClampedArray(4 * slotMap.length);
  paintSquares(slotMap, { width, height }, some, colours, blend, out);
  for (let i = 0; i < slotMap.length; i++) {
    const place = [i % width, Math.floor(i / width)] as const;
    const own = slowColour(some, colours, slotMap[i] as number, place) ?? [255, 255, 255];
    const n = blend.pixels.indexOf(i);
    const other = n < 0 ? null : slowColour(some, colours, blend.partners[n] as number, place);
    const share = (blend.shares[n] ?? 0) / 256;
    const wanted = own.map((c, k) => (other ? (1 - share) * c + share * (other[k] as number) : c));
    // Rounded twice where it is blended.
    for (const [k, c] of wanted.entries())
      expect(Math.abs((out[4 * i + k] as number) - c)).toBeLessThan(other ? 1.01 : 0.51);
    expect(out[4 * i + 3]).toBe(255);
  }
});
