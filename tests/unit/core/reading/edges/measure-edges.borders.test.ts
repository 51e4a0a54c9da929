import { describe, expect, test } from 'vitest';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { emptyRaster } from '../../../../../app/core/raster/linear-raster.ts';
import { findEdges } from '../../../../../app/core/reading/edges/measure-edges.ts';
import type { Border } from '../../../../../app/core/reading/reading.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

const size = { width: 400, height: 300 };
const pxPerMm = 2;

const bordersOf = (
  slots: Uint8Array,
  lightness: Float32Array,
  { width, height }: typeof size,
  scale: number,
): Border[] => runToEnd(findEdges(slots, lightness, emptyRaster(width, height), scale)).borders;

/** Rise of a blurred step, 0..1, `way` px from its middle (logistic stand-in for the error function). */
const rise = (way: number, sigma: number): number =>
  sigma === 0 ? (way > 0 ? 1 : 0) : 1 / (1 + Math.exp((-1.702 * way) / sigma));

/** Two halves left and right of a line through the middle, at `degrees` from upright. */
function twoSides(low: number, high: number, sigma: number, degrees = 0, noise = 0): Border[] {
  const angle = (degrees * Math.PI) / 180;
  const random = seeded(3);
  const slots = new Uint8Array(size.width * size.height);
  const lightness = new Float32Array(slots.length);
  for (let y = 0, i = 0; y < size.height; y++) {
    for (let x = 0; x < size.width; x++, i++) {
      const way = (x - 199.5) * Math.cos(angle) + (y - 149.5) * Math.sin(angle);
      slots[i] = way > 0 ? 1 : 0;
      const stray = noise * (random() + random() - 1);
      lightness[i] = low + (high - low) * rise(way, sigma) + stray;
    }
  }
  return bordersOf(slots, lightness, size, pxPerMm);
}
const only = (borders: Border[]): Border => {
  expect(borders).toHaveLength(1);
  return borders[0] as Border;
};

describe.each([0, 20, 45, 90])('a border at %i degrees', (degrees) => {
  test('hard: full contrast, neither soft nor lost', () => {
    const border = only(twoSides(30, 70, 0, degrees));
    expect(Math.abs(border.contrast - 40)).toBeLessThan(1);
    expect(border.soft + border.lost).toBe(0);
  });

  test('soft: wider than 0.6 % of the long side', () => {
    // 10-90 % of sigma 2.5 is 6.4 px, 1.6 % of 400.
    const border = only(twoSides(30, 70, 2.5, degrees, 1));
    expect(border.soft).toBeGreaterThan(0.9);
    expect(border.lost).toBe(0);
  });

  test('lost: under 4 L* apart, however sharp', () => {
    const border = only(twoSides(50, 52, 0, degrees));
    expect(border.lost).toBe(1);
    expect(border.soft).toBe(0);
  });
});

test('a small difference that is sharp is neither lost nor soft', () => {
  const border = only(twoSides(50, 57, 0, 0, 0.5));
  expect(border.lost).toBe(0);
  expect(border.soft).toBe(0);
  expect(Math.abs(border.contrast - 7)).toBeLessThan(1);
});

test('a picture soft throughout does not count itself hard', () => {
  expect(only(twoSides(20, 80, 3, 0)).soft).toBeGreaterThan(0.9);
});

test('length on the sheet, upright and slanting', () => {
  expect(only(twoSides(30, 70, 0, 0)).lengthMm).toBeCloseTo(300 / pxPerMm, 3);
  const slanting = only(twoSides(30, 70, 0, 20)).lengthMm;
  const true20 = 300 / Math.cos((20 * Math.PI) / 180) / pxPerMm;
  expect(Math.abs(slanting / true20 - 1)).toBeLessThan(0.03);
});

test('three slots in stripes have two borders, named by the lower slot first', () => {
  const slots = new Uint8Array(90 * 30).map((_, i) => (i % 90 < 30 ? 2 : i % 90 < 60 ? 0 : 1));
  const lightness = Float32Array.from(slots, (slot) => 20 + 30 * slot);
  const borders = bordersOf(slots, lightness, { width: 90, height: 30 }, 1);
  expect(borders.map(({ a, b, contrast }) => [a, b, Math.round(contrast)])).toEqual([
    [0, 1, 30],
    [0, 2, 60],
  ]);
});

test.each([
  [1, 1],
  [1, 7],
  [7, 1],
])('%i x %i px: finite', (width, height) => {
  const slots = Uint8Array.from({ length: width * height }, (_, i) => i % 2);
  const lightness = Float32Array.from(slots, (slot) => 90 * slot);
  for (const border of bordersOf(slots, lightness, { width, height }, 1)) {
    expect(Object.values(border).every(Number.isFinite)).toBe(true);
  }
});
