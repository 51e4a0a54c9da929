import { describe, expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { labInPlace } from '../../../../../app/core/raster/linear-raster.ts';
import { plainGround, plainLevel } from '../../../../../app/core/reading/alter/plain-ground.ts';
import type { ReadingWishes } from '../../../../../app/core/reading/reading.ts';
import { copyOf, oval, rasterOf, sameRaster } from '../../../../support/reading/plain-raster.ts';
import { readFor } from '../../../../support/reading/rasters.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

// Whole readings on a busy machine.
const size = { width: 200, height: 150 };
const noMask = new Uint8Array(size.width * size.height);

const planeOf = (at: (x: number, y: number) => number): Float32Array =>
  Float32Array.from(noMask, (_, i) => at(i % size.width, Math.floor(i / size.width)));

describe('the level of a ground', () => {
  test('is that of a flat one, and the middle of a gradient, where the ground lies', () => {
    expect(
      plainLevel(
        planeOf(() => 61),
        noMask,
      ),
    ).toBeCloseTo(61, 3);
    const left = Uint8Array.from(noMask, (_, i) => (i % 200 < 100 ? 0 : 1));
    const level = plainLevel(
      planeOf((x) => 20 + (60 * x) / 200),
      left,
    );
    expect(Math.abs(level - 35)).toBeLessThan(0.5);
  });

  test('heeds a few dark leaves little', () => {
    const random = seeded(2);
    const leaves = planeOf(() => (random() < 0.1 ? 20 : 70));
    expect(Math.abs(plainLevel(leaves, noMask) - 70)).toBeLessThan(1); // the plain mean is 65
  });

  test('without any ground is a number', () => {
    const none = noMask.map(() => 1);
    expect(
      plainLevel(
        planeOf(() => 5),
        none,
      ),
    ).toBe(0);
  });
});

const isPot = (x: number, y: number): boolean => Math.hypot(x - 100, y - 75) < 35;

/** A pale pot before leaves in the sun and in the shade. */
function pot() {
  const random = seeded(11);
  return rasterOf(size.width, size.height, (x, y): Lab => {
    if (isPot(x, y)) return [85, 5, 20];
    return random() < 0.5 ? [55 + 6 * random(), -20, 25] : [38 + 6 * random(), -15, 12];
  });
}

test('the ground is made plain beyond a millimetre from the line; the subject is left alone', () => {
  const raster = pot();
  const before = copyOf(raster);
  const planes = labInPlace(copyOf(raster));
  const mask = Uint8Array.from(noMask, (_, i) => Number(isPot(i % 200, Math.floor(i / 200))));
  const plain = runToEnd(plainGround(planes, raster, mask, 2));
  expect(sameRaster(raster, before)).toBe(true); // the input is not touched
  expect(sameRaster(plain, before, isPot)).toBe(true);
  const lab = labInPlace(copyOf(plain));
  let step = 0;
  let apart = 0;
  for (let i = 1; i < lab.lightness.length; i++) {
    const [x, y] = [i % 200, Math.floor(i / 200)];
    if (x === 0 || Math.hypot(x - 100, y - 75) < 39) continue;
    step = Math.max(
      step,
      Math.abs((lab.lightness[i] as number) - (lab.lightness[i - 1] as number)),
    );
    apart = Math.max(
      apart,
      Math.abs((lab.lightness[i] as number) - (planes.lightness[i] as number)),
      Math.abs((lab.a[i] as number) - (planes.a[i] as number)),
      Math.abs((lab.b[i] as number) - (planes.b[i] as number)),
    );
  }
  expect(step).toBeLessThan(0.2);
  expect(apart).toBeLessThan(0.05); // raster and planes say the same
});

describe('a reading with a plain ground', () => {
  const opened = { raster: pot(), clipped: { light: 0, dark: 0 } };
  const subject: ReadingWishes['subject'] = [
    { mode: 'circle', path: oval([0.5, 0.5], 0.2, 0.26), brush: 0 },
  ];

  test('has the ground in one value and one colour, and its line as it was', async () => {
    const sheet = { widthMm: 100, heightMm: 75 };
    const before = await readFor(opened, { subject }, sheet);
    const after = await readFor(opened, { subject, plainGround: true }, sheet);
    expect(after.reading.subject?.share).toBe(before.reading.subject?.share);
    const groundOf = ({ reading }: typeof before) =>
      reading.slots.filter(({ passage }) => passage === 'ground');
    expect(groundOf(before).length).toBeGreaterThan(1);
    const kinds = groundOf(after).filter(({ share }) => share > 0.02);
    expect(kinds).toHaveLength(1);
    // One and the same value beyond the line.
    const bins = new Set(
      Array.from(after.lightnessMap).filter((_, i) => i % 200 < 20 && i > 200 * 20),
    );
    expect(bins.size).toBe(1);
  });

  test('means nothing without a subject', async () => {
    const one = await readFor(opened, { plainGround: true });
    const other = await readFor(opened);
    expect(one.reading).toEqual(other.reading);
    expect(Buffer.compare(one.lightnessMap, other.lightnessMap)).toBe(0);
  });
});
