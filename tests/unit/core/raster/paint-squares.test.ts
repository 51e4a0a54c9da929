import { describe, expect, it } from 'vitest';
import { paintSquares, scaledGrid } from '../../../../app/core/raster/paint-squares.ts';

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
