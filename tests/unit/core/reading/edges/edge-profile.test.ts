import { describe, expect, test } from 'vitest';
import type { ContourLine } from '../../../../../app/core/raster/smooth-line.ts';
import {
  createCrossings,
  crossingPlace,
  EdgeProfile,
  findCrossings,
  lightnessPyramid,
} from '../../../../../app/core/reading/edges/edge-profile.ts';

/** A line of places with one normal. */
const lineOf = (
  places: readonly (readonly [x: number, y: number])[],
  normal: readonly [number, number],
  closed = false,
): ContourLine => ({
  count: places.length,
  closed,
  x: Float32Array.from(places, ([x]) => x),
  y: Float32Array.from(places, ([, y]) => y),
  normalX: new Float32Array(places.length).fill(normal[0]),
  normalY: new Float32Array(places.length).fill(normal[1]),
  steps: new Float32Array(places.length).fill(1),
});

/** 40 x 30 px in upright stripes: the slot of each column. */
const size = { width: 40, height: 30 };
const striped = (slotAt: (x: number, y: number) => number): Uint8Array =>
  Uint8Array.from({ length: 1200 }, (_, i) => slotAt(i % 40, Math.floor(i / 40)));

describe('further contours across a place', () => {
  const crossed = (
    slots: Uint8Array,
    [x, y]: readonly [number, number],
    normal: readonly [number, number],
    side: 1 | -1,
    own: number,
    scale = 1,
  ) => {
    const found = createCrossings();
    findCrossings(slots, size, lineOf([[x, y]], normal), 0, side, scale, own, found);
    return { distances: [...found.distances.subarray(0, found.count)], room: found.room };
  };
  const halves = striped((x) => (x < 20 ? 0 : 1));

  test.each([
    ['to the left', [3, 10], [1, 0], -1, 3],
    ['to the right', [36, 10], [1, 0], 1, 4],
    ['above', [10, 5], [0, 1], -1, 5],
    ['below', [10, 28], [0, 1], 1, 2],
  ] as const)('%s the picture ends after %j px', (_, place, normal, side, room) => {
    const plain = striped(() => 0);
    expect(crossed(plain, place, normal, side, 0)).toEqual({ distances: [], room });
  });

  test('in the middle there is room for half a profile', () => {
    expect(crossed(halves, [20, 15], [1, 0], 1, 1)).toEqual({ distances: [], room: 16 });
  });

  test('each is told by its distance, four at most, also past the profile', () => {
    const stripes = striped((x) => (x < 12 ? 0 : x < 15 ? 1 : x < 21 ? 0 : x < 32 ? 2 : 3));
    expect(crossed(stripes, [12, 15], [1, 0], 1, 1).distances).toEqual([3, 9, 20]);
    const fine = striped((x) => x % 3);
    expect(crossed(fine, [12, 15], [1, 0], 1, 0).distances).toEqual([1, 2, 3, 4]);
  });

  test('in steps of the level’s pixels', () => {
    const stripes = striped((x) => (x < 12 ? 0 : x < 20 ? 1 : 2));
    expect(crossed(stripes, [12, 15], [1, 0], 1, 1, 2).distances).toEqual([4]);
  });

  test('its own side may begin up to two steps later', () => {
    // The smoothed line lies a px before the contour: slot 1 begins at 13.
    const late = striped((x) => (x < 13 ? 0 : x < 18 ? 1 : 2));
    expect(crossed(late, [12, 15], [1, 0], 1, 1).distances).toEqual([6]);
    const later = striped((x) => (x < 15 ? 0 : 1));
    expect(crossed(later, [12, 15], [1, 0], 1, 1).distances).toEqual([3]);
  });
});

test('places of a profile lie from its middle, 15.5', () => {
  expect([crossingPlace(3, 1), crossingPlace(3, -1)]).toEqual([18.5, 12.5]);
});

describe('levels of half the size', () => {
  test('are means of two by two; an odd last row or column counts double', () => {
    const plane = Float32Array.from([1, 3, 5, 7, 9, 11, 2, 4, 6]);
    const [whole, half, quarter] = lightnessPyramid(plane, { width: 3, height: 3 }, 3);
    expect(whole?.plane).toBe(plane);
    expect(half).toMatchObject({ width: 2, height: 2, scale: 2 });
    expect([...(half?.plane ?? [])]).toEqual([(1 + 3 + 7 + 9) / 4, (5 + 11) / 2, (2 + 4) / 2, 6]);
    expect(quarter).toMatchObject({ width: 1, height: 1, scale: 4 });
    expect(quarter?.plane[0]).toBe((5 + 8 + 3 + 6) / 4);
  });
});

describe('a profile', () => {
  const ramp = Float32Array.from({ length: 1200 }, (_, i) => (i % 40) + 100 * Math.floor(i / 40));
  const values = (line: ContourLine, place: number, level: number, plane = ramp): number[] => {
    const profile = new EdgeProfile(lightnessPyramid(plane, size, 3));
    profile.setLine(line);
    profile.fill(place, level);
    return [...profile.values].map((value) => Math.round(value * 100) / 100);
  };
  const across = (y: number): number[] =>
    Array.from({ length: 32 }, (_, k) => Math.round(100 * (100 * (y - 0.5) + 4 + k)) / 100);

  test('runs from a to b across the line, one px a sample', () => {
    // From x = 20 - 15.5 = 4.5, the middle of px 4.
    expect(values(lineOf([[20, 10.5]], [1, 0]), 0, 0)).toEqual(across(10.5));
  });

  test('is the mean of six places to either side', () => {
    const line = lineOf(
      Array.from({ length: 20 }, (_, i) => [20, 5.5 + i] as const),
      [1, 0],
    );
    expect(values(line, 10, 0)).toEqual(across(15.5));
    expect(values(line, 2, 0)).toEqual(across(9.5)); // places 0 to 8 of an open line: mean 5.5 + 4
    expect(values({ ...line, closed: true }, 0, 0)).toEqual(
      across(5.5 + (21 + 14 + 15 + 16 + 17 + 18 + 19) / 13),
    );
  });

  test('leaves out places round a corner', () => {
    const line = lineOf(
      [
        [20, 10.5],
        [20, 14.5],
      ],
      [1, 0],
    );
    line.normalX[1] = 0;
    line.normalY[1] = 1;
    expect(values(line, 0, 0)).toEqual(across(10.5));
    line.normalX[1] = 0.8;
    line.normalY[1] = 0.6;
    expect(values(line, 0, 0)).not.toEqual(across(10.5));
  });

  test('beyond the picture goes on with its border', () => {
    const [first, second] = values(lineOf([[10, 10.5]], [1, 0]), 0, 0);
    expect([first, second]).toEqual([1000, 1000]);
    expect(values(lineOf([[30, 10.5]], [1, 0]), 0, 0).at(-1)).toBe(1039);
    expect(values(lineOf([[10.5, 10]], [0, 1]), 0, 0)[0]).toBe(10);
    expect(values(lineOf([[10.5, 20]], [0, 1]), 0, 0).at(-1)).toBe(2910);
  });

  test('and so where it runs out of a tall picture far from its other end', () => {
    const tall = { width: 4, height: 60 };
    const plane = Float32Array.from({ length: 240 }, (_, i) => Math.floor(i / 4));
    const profile = new EdgeProfile(lightnessPyramid(plane, tall, 1));
    profile.setLine(lineOf([[2, 50]], [0, 1]));
    profile.fill(0, 0);
    // From y = 50 - 15.5 = 34.5, the middle of row 34.
    expect([...profile.values]).toEqual(Array.from({ length: 32 }, (_, k) => Math.min(59, 34 + k)));
  });

  test('at a coarser level takes larger steps and reaches as many times as far', () => {
    const line = lineOf([[20, 10]], [1, 0]);
    const found = values(line, 0, 1);
    // Two px a sample: of the middle two, at 19 and 21, the interpolated ramp is 18.5 and 20.5.
    expect([found[15], found[16]]).toEqual([950 + 18.5, 950 + 20.5]);
  });

  test('a picture of one px gives its value', () => {
    const profile = new EdgeProfile(
      lightnessPyramid(Float32Array.of(42), { width: 1, height: 1 }, 2),
    );
    profile.setLine(lineOf([[0.5, 0.5]], [1, 0]));
    for (const level of [0, 1]) {
      profile.fill(0, level);
      expect(new Set(profile.values)).toEqual(new Set([42]));
    }
  });

  test('of no contour is a fault', () => {
    const profile = new EdgeProfile(lightnessPyramid(ramp, size, 1));
    expect(() => profile.fill(0, 0)).toThrow('No contour');
  });
});
