import { expect, test } from 'vitest';
import type { Band } from '../../../../app/core/reading/reading.ts';
import { bandOfBins } from '../../../../app/core/reading/sort-pixels.ts';
import {
  bandsByLimits,
  limitsOf,
  moveLimit,
  nearestLimit,
  roomOfLimit,
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

test('a finger means the nearest limit', () => {
  expect(nearestLimit([30, 50, 70], 42)).toBe(1);
  expect(nearestLimit([30, 50, 70], 3)).toBe(0);
  expect(nearestLimit([30, 50, 70], 99)).toBe(2);
  expect(nearestLimit([], 50)).toBe(-1);
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
