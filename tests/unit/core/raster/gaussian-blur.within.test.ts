import { expect, it } from 'vitest';
import { blurWithin } from '../../../../app/core/raster/gaussian-blur.ts';

const size = { width: 9, height: 9 };
const left = (i: number): boolean => i % 9 < 4;

it('nothing runs in from where there is no weight', () => {
  const weights = Float32Array.from({ length: 81 }, (_, i) => (left(i) ? 1 : 0));
  const plane = Float32Array.from({ length: 81 }, (_, i) => (left(i) ? 5 : 100));
  blurWithin([plane], weights, size, 2);
  for (let i = 0; i < 81; i++) if (left(i)) expect(plane[i]).toBeCloseTo(5, 4);
});

it('a flat plane stays flat whatever the weights, and the mean by weight stays between the ends', () => {
  const weights = Float32Array.from({ length: 81 }, (_, i) => 0.1 + (i % 7));
  const flat = new Float32Array(81).fill(3);
  const rising = Float32Array.from({ length: 81 }, (_, i) => i % 9);
  blurWithin([flat, rising], weights, size, 1.5);
  for (const value of flat) expect(value).toBeCloseTo(3, 4);
  expect(Math.min(...rising)).toBeGreaterThan(0);
  expect(Math.max(...rising)).toBeLessThan(8);
  expect(rising[40]).toBeCloseTo(4, 0);
});

it('what lies far from all weight keeps its own', () => {
  const weights = new Float32Array(81);
  weights[0] = 1;
  const plane = new Float32Array(81).fill(7);
  plane[0] = 1;
  blurWithin([plane], weights, size, 0.5);
  expect(plane[80]).toBe(7);
  expect(plane[0]).toBeCloseTo(1, 4);
});
