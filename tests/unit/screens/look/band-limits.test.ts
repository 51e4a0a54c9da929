import { expect, test } from 'vitest';
import type { Band } from '../../../../app/core/reading/reading.ts';
import { bandOfBins } from '../../../../app/core/reading/sort-pixels.ts';
import {
  bandsByLimits,
  lightnessAtShare,
  limitsOf,
  moveLimit,
  nearestPlace,
  roomOfLimit,
  shareBelow,
} from '../../../../app/screens/look/band-limits.ts';

test('the limits of three bands, from dark to light', () => {
  const band = (from: number, to: number) => ({ from, to }) as Band;
  expect(limitsOf([band(70, 100), band(30, 70), band(0, 30)])).toEqual([30, 70]);
  expect(limitsOf([band(0, 100)])).toEqual([]);
});

test('a limit goes where it is dragged, but not past its neighbours', () => {
  expect(moveLimit([30, 50, 70], 1, 55)).toEqual([30, 55, 70]);
  expect(moveLimit([30, 50, 70], 1, 90)).toEqual([30, 68, 70]);
  expect(moveLimit([30, 50, 70], 0, -4)).toEqual([2, 50, 70]);
  expect(moveLimit([30, 50, 70], 2, 140)).toEqual([30, 50, 98]);
  expect(roomOfLimit([30, 50, 70], 1)).toEqual([32, 68]);
});

test('a finger means the nearest border; of two in one place that on its own side', () => {
  expect(nearestPlace([0.3, 0.5, 0.7], 0.42)).toBe(1);
  expect(nearestPlace([0.3, 0.5, 0.7], 0.03)).toBe(0);
  expect(nearestPlace([0.3, 0.5, 0.7], 0.99)).toBe(2);
  expect(nearestPlace([0.3, 0.5, 0.5], 0.6)).toBe(2);
  expect(nearestPlace([0.3, 0.5, 0.5], 0.45)).toBe(1);
  expect(nearestPlace([], 0.5)).toBe(-1);
});

test('borders lie where so much of the picture is darker, and a place on the strip leads back', () => {
  const histogram = Array.from({ length: 256 }, (_, bin) => (bin * 37) % 101);
  for (const limits of [[50], [20, 60.8], [10.2, 30, 50, 70, 80, 90]]) {
    const shares = limits.map((limit) => shareBelow(histogram, limit));
    expect(shares).toEqual([...shares].sort((x, y) => x - y));
    for (const [i, limit] of limits.entries())
      expect(lightnessAtShare(histogram, shares[i] ?? 0)).toBeCloseTo(limit, 6);
    // As wide as their share: a border between two bins parts the very pixels the bands are counted from.
    const between = limits.map((limit) => (Math.round(limit * 2.55) - 0.5) / 2.55);
    const bands = bandsByLimits(histogram, between);
    const places = [0, ...between.map((limit) => shareBelow(histogram, limit)), 1];
    for (const [i, { share }] of [...bands].reverse().entries())
      expect((places[i + 1] ?? 0) - (places[i] ?? 0)).toBeCloseTo(share, 9);
  }
});

test('a border in a gap of the scale lies in its middle; beyond the ends are black and white', () => {
  const histogram = new Array<number>(256).fill(0);
  histogram[51] = 30; // L* 20
  histogram[204] = 10; // L* 80
  expect(shareBelow(histogram, 50)).toBe(0.75);
  expect(lightnessAtShare(histogram, 0.75)).toBeCloseTo(50, 6);
  expect(lightnessAtShare(histogram, 0.375)).toBeCloseTo(20, 6);
  expect([-1, 0, 1, 2].map((share) => lightnessAtShare(histogram, share))).toEqual([
    0, 0, 100, 100,
  ]);
  const none = new Array<number>(256).fill(0);
  expect([shareBelow(none, 50), lightnessAtShare(none, 0.5)]).toEqual([0, 0]);
});

test('bands made while dragging hold the very bins the reading gives them', () => {
  const histogram = Array.from({ length: 256 }, (_, bin) => (bin * 37) % 101);
  for (const limits of [[], [50], [20, 20.4, 60.8], [10, 30, 50, 70, 80, 90]]) {
    const byKernel = bandOfBins(limits);
    const bands = bandsByLimits(histogram, limits);
    expect(bands.map(({ band }) => band)).toEqual(bands.map((_, i) => i + 1));
    for (const { band, lightness } of bands) {
      let [count, sum] = [0, 0];
      histogram.forEach((pixels, bin) => {
        if (byKernel[bin] !== band) return;
        count += pixels;
        sum += (pixels * bin) / 2.55;
      });
      if (count) expect(lightness).toBeCloseTo(sum / count, 9);
    }
  }
});

test('a band without a pixel lies in the middle of its limits, not at nothing', () => {
  const histogram = new Array<number>(256).fill(0);
  histogram[255] = 10;
  expect(bandsByLimits(histogram, [40]).map(({ lightness }) => lightness)).toEqual([100, 20]);
});
