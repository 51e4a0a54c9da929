import { describe, expect, test } from 'vitest';
import { paintSlots, paintSoft } from '../../../../../app/core/raster/paint-slots.ts';
import type { Edge } from '../../../../../app/core/reading/edges/edge.ts';
import {
  softBlend,
  softEdges,
  softenedShare,
} from '../../../../../app/core/reading/edges/soft-blend.ts';
import { madeEdge } from '../../../../support/reading/made-edge.ts';

const size = { width: 200, height: 60 };
/** Left half slot 0, right half slot 1, the lowest 10 rows slot 2. */
const slots = Uint8Array.from({ length: size.width * size.height }, (_, i) =>
  i >= 50 * size.width ? 2 : i % size.width < 100 ? 0 : 1,
);
const table = new Uint8ClampedArray([240, 200, 180, 40, 60, 80, 120, 120, 120]);

/** The upright edge down the middle, 12 % of the long side (24 px) wide from 10 to 90 %. */
const upright = (over: Partial<Edge> = {}): Edge =>
  madeEdge(
    [
      [0.5, 0],
      [0.5, 50 / 60],
    ],
    { kind: 'soft', widthShare: 0.12, ...over },
  );

function painted(edges: readonly Edge[]): Uint8ClampedArray {
  const out = new Uint8ClampedArray(slots.length * 4);
  paintSoft(slots, softBlend(slots, size, softEdges(edges, size)), table, out);
  return out;
}
const flat = new Uint8ClampedArray(slots.length * 4);
paintSlots(slots, table, flat);

/** One channel along a row. */
const row = (rgba: Uint8ClampedArray, y: number, channel = 0): number[] =>
  Array.from({ length: size.width }, (_, x) => rgba[(y * size.width + x) * 4 + channel] as number);

describe('an edge 24 px wide', () => {
  const out = painted([upright()]);
  const across = row(out, 25);

  test('falls all the way across, without a step', () => {
    for (let x = 1; x < size.width; x++) {
      const fall = (across[x - 1] as number) - (across[x] as number);
      expect(fall, `at ${x}`).toBeGreaterThanOrEqual(0);
      expect(fall, `at ${x}`).toBeLessThanOrEqual(10); // an even fall of 200 over 30 px is 6.7
    }
  });

  test('is as wide from 10 to 90 % as it was measured', () => {
    const at = (level: number): number => across.findIndex((code) => code <= level);
    expect(at(40 + 0.1 * 200) - at(40 + 0.9 * 200)).toBeGreaterThanOrEqual(23);
    expect(at(40 + 0.1 * 200) - at(40 + 0.9 * 200)).toBeLessThanOrEqual(25);
  });

  test('changes nothing beyond half of the whole rise, nor another slot within it', () => {
    for (let y = 0; y < size.height; y++)
      for (let x = 0; x < size.width; x++) {
        const at = (y * size.width + x) * 4;
        if (y < 50 && Math.abs(x + 0.5 - 100) < 15) continue; // 24 / 0.8 / 2
        if (out[at] !== flat[at] || out[at + 2] !== flat[at + 2]) expect.fail(`at ${x}, ${y}`);
      }
  });

  test('mixes no colour that is not between the two', () => {
    for (let channel = 0; channel < 3; channel++)
      for (const code of row(out, 25, channel)) {
        const [own, other] = [table[channel] as number, table[3 + channel] as number];
        expect(code).toBeGreaterThanOrEqual(Math.min(own, other));
        expect(code).toBeLessThanOrEqual(Math.max(own, other));
      }
  });
});

test('mirrored in gives mirrored out', () => {
  const mirrored = slots.map((_, i) => {
    const x = i % size.width;
    return slots[i - x + size.width - 1 - x] as number;
  });
  const out = new Uint8ClampedArray(slots.length * 4);
  paintSoft(mirrored, softBlend(mirrored, size, softEdges([upright()], size)), table, out);
  expect(row(out, 25).reverse()).toEqual(row(painted([upright()]), 25));
});

test('hard and found edges stay as they are, sharpened ones too', () => {
  for (const over of [
    { kind: 'hard' },
    { kind: 'found' },
    { kind: 'soft', wish: 'sharpen' },
  ] as const)
    expect(Buffer.from(painted([upright(over)])).equals(Buffer.from(flat))).toBe(true);
});

test('one she softens is drawn soft, though it was measured crisp; a lost one runs together', () => {
  const [softened] = softEdges(
    [upright({ kind: 'hard', wish: 'soften', widthShare: 0.001 })],
    size,
  );
  expect(softened?.reachPx).toBeCloseTo((softenedShare * 200) / 0.8 / 2, 9);
  expect(softEdges([upright({ kind: 'hard', wish: 'lose', widthShare: 0 })], size)).toHaveLength(1);
  expect(softEdges([upright({ kind: 'lost', widthShare: 0.5 })], size)[0]?.reachPx).toBeCloseTo(
    (0.06 * 200) / 0.8 / 2,
    9,
  );
});

test('a thin shape between two keeps the softness from leaking past it', () => {
  // Slot 2 as an upright bar 4 px wide at 104..108: what lies behind it is not reached.
  const barred = slots.map((slot, i) => {
    const x = i % size.width;
    return slot === 1 && x >= 104 && x < 108 ? 2 : slot;
  });
  const blend = softBlend(barred, size, softEdges([upright()], size));
  for (const pixel of blend.pixels) expect(pixel % size.width).toBeLessThan(104);
});

test('a map of another size is refused; one pixel and no edges are fine', () => {
  expect(() => softBlend(slots, { width: 10, height: 10 }, [])).toThrow(RangeError);
  const one = { width: 1, height: 1 };
  expect(softBlend(new Uint8Array(1), one, softEdges([upright()], one)).pixels.length).toBeLessThan(
    2,
  );
});

test('every pixel within reach is blended once, and no other', () => {
  const { pixels, partners, shares } = softBlend(slots, size, softEdges([upright()], size));
  // 24 / 0.8 / 2 = 15 px to either side, in the 50 rows of the two.
  const reached = [...slots.keys()].filter(
    (i) => slots[i] !== 2 && Math.abs((i % size.width) + 0.5 - 100) < 15,
  );
  expect([...pixels].sort((one, two) => one - two)).toEqual(reached);
  for (const [n, pixel] of pixels.entries()) {
    expect(partners[n]).toBe(1 - Number(slots[pixel]));
    // Half at the edge itself, a half of 256 as bytes have it, falling evenly to nothing.
    const away = Math.abs((pixel % size.width) + 0.5 - 100) / 15;
    expect(Math.abs(Number(shares[n]) - 128 * (1 - away))).toBeLessThan(2);
  }
});
