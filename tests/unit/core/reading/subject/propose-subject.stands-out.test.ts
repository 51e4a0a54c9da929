import { describe, expect, test } from 'vitest';
import { type Lab, linearOfLab } from '../../../../../app/core/colour/lab.ts';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { emptyRaster } from '../../../../../app/core/raster/linear-raster.ts';
import { insideStroke } from '../../../../../app/core/raster/paint-stroke.ts';
import { proposeSubject } from '../../../../../app/core/reading/subject/propose-subject.ts';

// Plain pictures of a sheet of 380 by 280 mm, one px for 2 mm, with round things of 50 mm radius in them. What is to
// stand out is made so, and by how much is the test's own (own).
const size = { width: 190, height: 140 };
type Place = readonly [x: number, y: number];
const middle: Place = [95, 70];
const radius = 25;

function proposed(labAt: (x: number, y: number) => Lab): Uint8Array | null {
  const raster = emptyRaster(size.width, size.height);
  const [lightness, a, b] = [0, 1, 2].map(() => new Float32Array(raster.red.length)) as [
    Float32Array,
    Float32Array,
    Float32Array,
  ];
  for (let i = 0; i < lightness.length; i++) {
    const lab = labAt(i % size.width, Math.floor(i / size.width));
    [lightness[i], a[i], b[i]] = lab;
    [raster.red[i], raster.green[i], raster.blue[i]] = linearOfLab(lab);
  }
  const stroke = runToEnd(proposeSubject({ lightness, a, b }, raster, 0.5));
  return stroke && insideStroke(stroke.path, size);
}

const within = (x: number, y: number, [u, v]: Place, far = radius): boolean =>
  Math.hypot(x + 0.5 - u, y + 0.5 - v) < far;
const ground: Lab = [50, -6, 12];
/** The ground's colour so far off in b*. */
const yellower = (by: number): Lab => [50, -6, 12 + by];
const ripple = (x: number, y: number): number => (((x >> 1) + (y >> 1)) % 2 === 0 ? 5 : -5);
const holds = (mask: Uint8Array | null, [x, y]: Place): boolean => mask?.[y * size.width + x] === 1;
const shareOf = (mask: Uint8Array | null): number =>
  (mask ?? new Uint8Array(1)).reduce((sum, own) => sum + own, 0) / (size.width * size.height);

describe('a thing stands out by its colour', () => {
  const thing = (by: number, texture = 0) =>
    proposed((x, y) => {
      if (!within(x, y, middle)) return ground;
      const [l, a, b] = yellower(by);
      return [l + texture * ripple(x, y), a, b];
    });

  test('where that is plainly another, with or without texture', () => {
    for (const texture of [0, 1]) {
      const mask = thing(14, texture);
      expect(holds(mask, middle)).toBe(true);
      // All of it, and not much more: 7.4 % of the sheet.
      const own = (Math.PI * radius ** 2) / (size.width * size.height);
      expect(shareOf(mask)).toBeGreaterThan(0.95 * own);
      expect(shareOf(mask)).toBeLessThan(1.4 * own);
    }
  });

  test('where it is hardly another, only with more contrast than round it', () => {
    expect(thing(5) === null).toBe(true);
    expect(holds(thing(5, 1), middle)).toBe(true);
  });

  test('not where it is as good as the same, however it is textured', () => {
    expect(thing(1) === null).toBe(true);
    expect(thing(1, 1) === null).toBe(true);
  });

  test('lightness counts, but less than colour', () => {
    const lighter = (by: number) =>
      proposed((x, y) => (within(x, y, middle) ? [50 + by, -6, 12] : ground));
    expect(holds(lighter(14), middle)).toBe(true);
    // Seven tenths of 4 L* are less than anything has to differ by, 3.
    expect(lighter(4) === null).toBe(true);
  });
});

describe('of two things alike', () => {
  const two = (one: Place, other: Place) =>
    proposed((x, y) => (within(x, y, one) || within(x, y, other) ? yellower(30) : ground));

  test('the one nearer to the middle is proposed, on whichever side', () => {
    for (const [near, far] of [
      [
        [80, 70],
        [155, 70],
      ],
      [
        [110, 70],
        [35, 70],
      ],
      [
        [90, 60],
        [155, 105],
      ],
      [
        [100, 80],
        [35, 35],
      ],
    ] as const) {
      const mask = two(near, far);
      expect(holds(mask, near)).toBe(true);
      expect(holds(mask, far)).toBe(false);
    }
  });
});

test('it lies where the thing does, a little wider all round and never beyond the sheet', () => {
  for (const at of [
    [70, 60],
    [115, 85],
  ] as const) {
    const mask = proposed((x, y) => (within(x, y, at) ? yellower(30) : ground));
    const astray = [...(mask ?? [])].filter((own, i) => {
      const [x, y] = [i % size.width, Math.floor(i / size.width)];
      return own === 1 ? !within(x, y, at, 1.3 * radius) : within(x, y, at, radius - 4);
    });
    expect(mask === null).toBe(false);
    expect(astray).toHaveLength(0);
  }
});
