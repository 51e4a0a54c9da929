import { describe, expect, test } from 'vitest';
import type { Lab } from '../../../../app/model/lab.ts';
import type { ReadingWishes } from '../../../../app/model/reading.ts';
import { plainGround } from '../../../../workers/kernels/alter/plain-ground.ts';
import { plainWash } from '../../../../workers/kernels/alter/plain-wash.ts';
import { labInPlace } from '../../../../workers/kernels/pixels/lab-planes.ts';
import { drained } from '../reading/drained.ts';
import { readFor } from '../reading/rasters.ts';
import { seeded } from '../reading/seeded.ts';
import { copyOf, oval, rasterOf, sameRaster } from './plain-raster.ts';

const size = { width: 200, height: 150 };
const noMask = new Uint8Array(size.width * size.height);

const planeOf = (at: (x: number, y: number) => number): Float32Array =>
  Float32Array.from(noMask, (_, i) => at(i % size.width, Math.floor(i / size.width)));

describe('the wash nearest to a ground', () => {
  test('of a gentle gradient is that gradient', () => {
    const wash = plainWash(
      planeOf((x, y) => 60 + (4 * x) / 200 - (5 * y) / 150),
      noMask,
      size,
    );
    expect(wash.start).toBeCloseTo(60, 2);
    expect(wash.across * 200).toBeCloseTo(4, 2);
    expect(wash.down * 150).toBeCloseTo(-5, 2);
  });

  test('heeds a few dark leaves little', () => {
    const random = seeded(2);
    const leaves = planeOf(() => (random() < 0.1 ? 20 : 70));
    const wash = plainWash(leaves, noMask, size);
    const middle = wash.start + 100 * wash.across + 75 * wash.down;
    expect(Math.abs(middle - 70)).toBeLessThan(1); // the plain mean is 65
  });

  test('gains one value at most, about the middle of the ground', () => {
    const left = Uint8Array.from(noMask, (_, i) => (i % 200 < 100 ? 0 : 1));
    const wash = plainWash(
      planeOf((x) => 20 + (60 * x) / 200),
      left,
      size,
    );
    expect(wash.across * 200).toBeCloseTo(10, 3);
    expect(wash.start + 50 * wash.across).toBeCloseTo(35, 0);
  });

  test('without any ground, or on one line of it, is made of numbers', () => {
    expect(
      plainWash(
        noMask.length ? planeOf(() => 5) : noMask,
        noMask.map(() => 1),
        size,
      ),
    ).toEqual({ start: 0, across: 0, down: 0 });
    const line = plainWash(Float32Array.of(1, 2, 3), new Uint8Array(3), { width: 3, height: 1 });
    expect(Object.values(line).every(Number.isFinite)).toBe(true);
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
  const plain = drained(plainGround(planes, raster, mask, 2));
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
    const bins = new Set(
      Array.from(after.lightnessMap).filter((_, i) => i % 200 < 20 && i > 200 * 20),
    );
    expect(Math.max(...bins) - Math.min(...bins)).toBeLessThan(6);
  });

  test('means nothing without a subject', async () => {
    expect(await readFor(opened, { plainGround: true })).toEqual(await readFor(opened));
  });
});
