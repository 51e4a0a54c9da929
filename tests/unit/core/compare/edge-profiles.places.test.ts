import { expect, test } from 'vitest';
import {
  addProfile,
  type Place,
  placesAlong,
  samples,
  samplesEachWay,
  softenedAt,
} from '../../../../app/core/compare/edge-profiles.ts';
import { pixelStates } from '../../../../app/core/compare/measured-sheet.ts';
import { seeded } from '../../../support/seeded.ts';

// Courses and planes are made in the test, and what is read off them follows; a contrast counts from half to twice the
// drawn one (own).
const size = { width: 200, height: 100 };

test('places lie evenly along a course, round its corners too, with the direction across it', () => {
  // 80 px to the right, then 30 px down, then 10 px back.
  const path = [
    [0.1, 0.2],
    [0.5, 0.2],
    [0.5, 0.5],
    [0.45, 0.5],
  ] as const;
  const places = placesAlong(path, size, 7);
  expect(places).toHaveLength(18); // of 120 px, the first at 0
  for (const [n, { x, y, nx, ny }] of places.entries()) {
    const along = 7 * n;
    const [wantX, wantY] =
      along < 80 ? [20 + along, 20] : along < 110 ? [100, along - 60] : [210 - along, 50];
    expect([x, y]).toEqual([expect.closeTo(wantX, 9), expect.closeTo(wantY, 9)]);
    expect([nx + 0, ny + 0]).toEqual(along < 80 ? [0, 1] : along < 110 ? [-1, 0] : [0, -1]);
  }
  expect(placesAlong([[0.5, 0.5]], size, 7)).toEqual([]);
});

const slope = Float32Array.from(
  { length: size.width * size.height },
  (_, i) => 3 * (i % size.width) + 5 * Math.floor(i / size.width),
);
const profileAt = (place: Place, states: Uint8Array | null = null) => {
  const out = new Float64Array(samples).fill(100);
  return { whole: addProfile(slope, states, size, place, 0.7, out), out };
};

test('a profile is read between the middles of pixels and added to what stands there', () => {
  const place = { x: 90.3, y: 41.8, nx: 0.8, ny: -0.6 };
  const { whole, out } = profileAt(place);
  expect(whole).toBe(true);
  for (let k = 0; k < samples; k++) {
    const away = 0.7 * (k - samplesEachWay);
    const [x, y] = [place.x + 0.8 * away - 0.5, place.y - 0.6 * away - 0.5];
    expect(out[k]).toBeCloseTo(100 + 3 * x + 5 * y, 3);
  }
});

test('a place whose profile leaves the picture, or meets a pixel that does not count, tells nothing', () => {
  const reach = 0.7 * samplesEachWay;
  const across = (x: number, y: number, nx: number, ny: number) =>
    profileAt({ x, y, nx, ny }).whole;
  expect([across(reach + 0.51, 50, 1, 0), across(reach + 0.49, 50, 1, 0)]).toEqual([true, false]);
  expect([across(199.49 - reach, 50, 1, 0), across(199.51 - reach, 50, 1, 0)]).toEqual([
    true,
    false,
  ]);
  expect([across(100, reach + 0.51, 0, 1), across(100, reach + 0.49, 0, 1)]).toEqual([true, false]);
  expect([across(100, 99.49 - reach, 0, 1), across(100, 99.51 - reach, 0, 1)]).toEqual([
    true,
    false,
  ]);
  const states = new Uint8Array(slope.length);
  const place = { x: 100.5, y: 50.5, nx: 1, ny: 0 };
  expect(profileAt(place, states).whole).toBe(true);
  for (const state of ['missing', 'clipped', 'glare', 'shadow'] as const) {
    states[50 * size.width + 100] = pixelStates[state];
    expect(profileAt(place, states).whole).toBe(false);
  }
});

/** A step that rises over so many samples, about a place. */
const ramp = (wide: number, at = 12): Float64Array =>
  Float64Array.from(
    { length: samples },
    (_, k) => 40 + 30 * Math.min(1, Math.max(0, (k - at) / wide + 0.5)),
  );
const [hard, soft] = [ramp(1), ramp(9)];

test('contrast of half or of twice the drawn one is that of another shape', () => {
  const came = (contrast: number) =>
    softenedAt(
      hard.map((value) => contrast * value),
      hard,
      soft,
    );
  expect([came(0.49), came(0.51)].map((found) => found === null)).toEqual([true, false]);
  expect([came(1.98), came(2.02)].map((found) => found === null)).toEqual([false, true]);
});

test('it is laid where it fits best, up to three samples to either side', () => {
  const random = seeded(4);
  for (const shift of [-3, -1, 0, 2, 3])
    for (const way of [0, 0.4, 1.2]) {
      const mixed = Float64Array.from({ length: samples }, (_, k) => {
        const at = Math.min(samples - 1, Math.max(0, k - shift));
        return (
          10 +
          0.8 * ((1 - way) * (hard[at] as number) + way * (soft[at] as number)) +
          0.01 * random()
        );
      });
      expect(softenedAt(mixed, hard, soft)?.way).toBeCloseTo(way, 2);
    }
});

test('what a place tells is what softening changes there beside level and contrast, squared L*', () => {
  const told = softenedAt(hard, hard, soft)?.told ?? 0;
  // By Gram and Schmidt, over the samples that are compared: three less at either end.
  const inner = (profile: Float64Array): number[] => [...profile.subarray(3, samples - 3)];
  const dot = (one: number[], two: number[]): number =>
    one.reduce((sum, value, i) => sum + value * (two[i] as number), 0);
  const less = (one: number[], two: number[]): number[] => {
    const part = dot(one, two) / dot(two, two);
    return one.map((value, i) => value - part * (two[i] as number));
  };
  const level = inner(hard).map(() => 1);
  const contrast = less(inner(hard), level);
  const change = inner(soft).map((value, i) => value - (inner(hard)[i] as number));
  const own = less(less(change, level), contrast);
  expect(told).toBeCloseTo(dot(own, own), 6);
  // Half the contrast as drawn tells a quarter.
  const [half, halfSoft] = [hard, soft].map((each) => each.map((value) => value / 2)) as [
    Float64Array,
    Float64Array,
  ];
  expect(softenedAt(half, half, halfSoft)?.told).toBeCloseTo(told / 4, 6);
});
