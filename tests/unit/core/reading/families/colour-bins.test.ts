import { expect, test } from 'vitest';
import {
  binColours,
  colourTrust,
  shadeFree,
} from '../../../../../app/core/reading/families/colour-bins.ts';

// Pictures of some pixels; what is expected is worked out by hand from the rules as the file states them (own).
const planesOf = (...pixels: readonly (readonly [l: number, a: number, b: number])[]) => ({
  lightness: Float32Array.from(pixels, ([l]) => l),
  a: Float32Array.from(pixels, ([, a]) => a),
  b: Float32Array.from(pixels, ([, , b]) => b),
});

test('colour is trusted from L* 10 to 16, and scales with L* + 16', () => {
  expect([5, 10, 13, 16, 60].map(colourTrust)).toEqual([0, 0, 0.5, 1, 1]);
  expect(shadeFree(50)).toBe(1);
  expect(shadeFree(17)).toBe(2);
  expect(shadeFree(-4)).toBe(66 / 16);
});

test('light and shade of one surface are one place; what is too dark counts nowhere', () => {
  const bins = binColours(planesOf([50, 20, -9], [17, 10, -4.5], [13, 0, 0], [8, 30, 30]));
  expect([...bins.a]).toEqual([20, 0]); // rising in b*
  expect([...bins.b]).toEqual([-9, 0]);
  expect([...bins.weight]).toEqual([2, 0.5]);
  expect(bins.total).toBe(2.5);
  expect([...bins.share]).toEqual([2 / 4, 0.5 / 4]);
  expect(bins.shade[0]).toBeCloseTo(0.75, 12); // 1 and a half
});

test('the shadow is the mean of what lies from L* 12 to 30, else of the whole', () => {
  // At L* 17 a* and b* count double, at L* 28 half as much again.
  const { shadow } = binColours(planesOf([17, 5, -5], [28, 4, 2], [50, 40, 40], [30.5, 9, 9]));
  expect(shadow[0]).toBeCloseTo((10 + 6) / 2, 12);
  expect(shadow[1]).toBeCloseTo((-10 + 3) / 2, 12);
  const none = binColours(planesOf([50, 12, 4], [50, 30, -8]));
  expect(none.shadow).toEqual([21, -2]);
  expect(binColours(planesOf([5, 9, 9])).shadow).toEqual([0, 0]);
});

test('only the pixels of the map’s value count', () => {
  const where = { map: Uint8Array.of(1, 0, 1), value: 1 };
  const bins = binColours(planesOf([50, 4, 4], [50, 30, 30], [50, 12, 4]), null, where);
  expect([...bins.a]).toEqual([4, 12]);
  expect([...bins.share]).toEqual([0.5, 0.5]);
});

test('what stands out and is strong weighs more; a blend at a border is nobody’s colour', () => {
  const size = { width: 8, height: 1 };
  const around = { size, pxPerMm: 1, cellPx: 4, grid: { width: 2, height: 1 } };
  const plain = planesOf(...Array.from({ length: 8 }, (_, x) => [50, x < 4 ? 0 : 20, 0] as const));
  // The surroundings are grey on the left and half as red on the right: 0 and 10 apart, C* 0 and 20.
  const bins = binColours(plain, {
    ...around,
    a: Float32Array.of(0, 10),
    b: Float32Array.of(0, 0),
  });
  expect([...bins.a]).toEqual([0, 20]);
  expect(bins.weight[0]).toBe(4);
  expect(bins.weight[1]).toBeCloseTo(4 * (1 + 10 / 6 + 20 / 20), 9);
  // The two at the border see 0 and 20 to either side, 12 or more.
  expect([...bins.share]).toEqual([3 / 8, 3 / 8]);
});

test('colours beyond the plane lie in its last places', () => {
  const bins = binColours(planesOf([50, 500, -500], [50, -500, 500]));
  expect(bins.count).toBe(2);
});
