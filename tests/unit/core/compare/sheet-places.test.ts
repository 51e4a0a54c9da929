import { expect, test } from 'vitest';
import {
  type Corners,
  cornersOf,
  homographyOf,
  project,
} from '../../../../app/core/compare/homography.ts';
import {
  likeliest,
  placesAnywhere,
  placesOffBoard,
} from '../../../../app/core/compare/sheet-places.ts';
import type { LinearRaster } from '../../../../app/core/raster/linear-raster.ts';

// Sizes, turns and borders that are tried: (own). Photos are made in the test.

const lengthsOf = (corners: Corners): number[] =>
  corners.map(([x, y], i) => {
    const [u, v] = corners[(i + 1) % 4] as Corners[0];
    return Math.hypot(u - x, v - y);
  });

test('places anywhere keep the shape of the sheet, upright, at every size, turn and spot, the middle among them', () => {
  const places = placesAnywhere({ width: 400, height: 300 }, { width: 3, height: 2 });
  expect(places).toHaveLength(5 * 3 * 7 * 7);
  const middles = places.map((corners) =>
    [0, 1].map((c) => corners.reduce((sum, p) => sum + (p[c] ?? 0), 0) / 4),
  );
  const sizes = new Set<string>();
  const turns = new Set<string>();
  for (const corners of places) {
    const [top = 0, right = 0, below = 0, left = 0] = lengthsOf(corners);
    expect([below, left]).toEqual([expect.closeTo(top, 6), expect.closeTo(right, 6)]);
    expect(top / right).toBeCloseTo(1.5, 9);
    sizes.add((top / 400).toFixed(2));
    const [[x0, y0], [x1, y1]] = corners;
    turns.add(Math.atan2(y1 - y0, x1 - x0).toFixed(3));
    // Its corners go round as those of a sheet do: no mirror.
    const [, , [x2, y2]] = corners;
    expect((x1 - x0) * (y2 - y1) - (y1 - y0) * (x2 - x1)).toBeGreaterThan(0);
  }
  expect([...sizes].sort()).toEqual(['0.50', '0.57', '0.65', '0.74', '0.84']);
  expect([...turns].map(Number).sort((one, two) => one - two)).toEqual([-0.09, 0, 0.09]);
  const spots = [0, 1].map((c) =>
    [...new Set(middles.map((middle) => (middle[c] as number).toFixed(1)))].map(Number),
  );
  for (const [c, middle] of [200, 150].entries()) {
    const offs = (spots[c] ?? [])
      .map((spot) => (spot - middle) / 400)
      .sort((one, two) => one - two);
    expect(offs).toEqual(
      [-0.18, -0.12, -0.06, 0, 0.06, 0.12, 0.18].map((off) => expect.closeTo(off, 3)),
    );
  }
});

/** A grey board with a white sheet on it, between these px. */
function onBoard(
  width: number,
  height: number,
  [left, top, right, bottom]: readonly number[],
): LinearRaster {
  const light = new Float32Array(width * height).fill(0.05);
  for (let y = top as number; y < (bottom as number); y++)
    light.fill(0.8, y * width + (left as number), y * width + (right as number));
  return { width, height, red: light, green: light, blue: light };
}

test('off the board the painting is looked for up to the edge of the paper, and within a border of three widths', () => {
  // The sheet lies 120 x 80 px large; the painting is 3 : 2, or the same upright.
  for (const [width, height] of [
    [30, 20],
    [20, 30],
  ] as const) {
    const places = placesOffBoard(onBoard(200, 150, [40, 35, 160, 115]), { width, height });
    expect(places).toHaveLength(4);
    const [outer = 0, above = 0] = lengthsOf(places[0] as Corners);
    // Its long side lies along the long side of the paper, which is found a little wide.
    const paper = width > height ? [120, 80] : [80, 120];
    expect(Math.abs(outer - (paper[0] as number))).toBeLessThan(5);
    expect(Math.abs(above - (paper[1] as number))).toBeLessThan(5);
    for (const [i, share] of [0, 0.014, 0.026, 0.037].entries()) {
      const [one = 0, two = 0] = lengthsOf(places[i] as Corners);
      const margin = 2 * share * 30;
      expect(one / outer).toBeCloseTo(width / (width + margin), 3);
      expect(two / above).toBeCloseTo(height / (height + margin), 3);
      const middle = [0, 1].map(
        (c) => (places[i] ?? []).reduce((sum, p) => sum + (p[c] ?? 0), 0) / 4,
      );
      expect(Math.hypot((middle[0] ?? 0) - 100, (middle[1] ?? 0) - 75)).toBeLessThan(3);
    }
    const sides = places.map((place) => lengthsOf(place)[0] as number);
    expect(sides).toEqual([...sides].sort((one, two) => two - one));
  }
});

test('a photo of nothing but board has no such place', () => {
  expect(placesOffBoard(onBoard(120, 90, [0, 0, 0, 0]), { width: 3, height: 2 })).toEqual([]);
});

test('of many places the five likeliest are kept, the best first, each the way round that is likeliest', async () => {
  const size = { width: 30, height: 20 };
  const places = Array.from({ length: 90 }, (_, i): Corners => {
    const [x, y] = [10 * i, 5];
    return [
      [x, y],
      [x + 6, y],
      [x + 6, y + 4],
      [x, y + 4],
    ];
  });
  let pauses = 0;
  // The nearer its upper left corner to a spot: of place 42, begun at its third corner.
  const found = await likeliest(
    places,
    (h) => {
      const [x, y] = project(h, 0, 0);
      return -Math.hypot(x - 426, y - 9.5);
    },
    size,
    async () => {
      pauses++;
    },
  );
  expect(found).toHaveLength(5);
  const [x, y] = places[42]?.[2] ?? [];
  expect(found[0]).toEqual([[x, y], places[42]?.[3], places[42]?.[0], places[42]?.[1]]);
  const far = found.map(([[u, v]]) => Math.hypot(u - 426, v - 9.5));
  expect(far).toEqual([...far].sort((one, two) => one - two));
  expect(pauses).toBe(2); // of 90 places: every 40
  const h = homographyOf(cornersOf(30, 20), found[0] as Corners);
  expect(h && project(h, 30, 20)).toEqual([expect.closeTo(420, 6), expect.closeTo(5, 6)]);
});
