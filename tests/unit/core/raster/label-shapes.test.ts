import { describe, expect, test } from 'vitest';
import { runToEnd } from '../../../../app/core/numeric/run-to-end.ts';
import {
  firstPixels,
  labelPixels,
  labelRuns,
  measureOutlines,
  shapeAt,
} from '../../../../app/core/raster/label-shapes.ts';
import { seeded } from '../../../support/reading/seeded.ts';

/** A map from rows of digits. */
const mapOf = (...rows: string[]) => ({
  map: Uint8Array.from([...rows.join('')], Number),
  size: { width: rows[0]?.length ?? 0, height: rows.length },
});

/** The slow obvious way: a flood from every pixel that has no shape yet. */
function flooded(map: Uint8Array, width: number): number[] {
  const labels = new Array<number>(map.length).fill(-1);
  let count = 0;
  for (let start = 0; start < map.length; start++) {
    if (labels[start] !== -1) continue;
    const queue = [start];
    labels[start] = count;
    for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
      const x = at % width;
      const near = [at - width, at + width];
      if (x > 0) near.push(at - 1);
      if (x < width - 1) near.push(at + 1);
      for (const next of near) {
        if (map[next] !== map[start] || labels[next] !== -1) continue;
        labels[next] = count;
        queue.push(next);
      }
    }
    count++;
  }
  return labels;
}

describe('connected shapes', () => {
  test('touch by their sides, not by their corners', () => {
    const { map, size } = mapOf('010', '101', '010');
    expect(runToEnd(labelRuns(map, size)).kinds).toHaveLength(9);
  });

  test('a shape that closes late is one', () => {
    const { map, size } = mapOf('10101', '10101', '11111');
    const found = runToEnd(labelRuns(map, size));
    expect([...labelPixels(found)]).toEqual([0, 1, 0, 2, 0, 0, 1, 0, 2, 0, 0, 0, 0, 0, 0]);
    expect([[...found.kinds], [...found.areasPx]]).toEqual([
      [1, 0, 0],
      [11, 2, 2],
    ]);
  });

  test.each([2, 3, 5])('seeded maps of %i kinds: as a flood finds them', (kinds) => {
    const random = seeded(kinds);
    for (const [width, height] of [
      [1, 1],
      [1, 40],
      [40, 1],
      [37, 29],
    ] as const) {
      const map = Uint8Array.from({ length: width * height }, () => Math.floor(kinds * random()));
      const found = runToEnd(labelRuns(map, { width, height }));
      expect([...labelPixels(found)]).toEqual(flooded(map, width));
    }
  });
});

describe('facts of a shape', () => {
  const size = { width: 31, height: 23 };
  const random = seeded(7);
  const map = Uint8Array.from({ length: 31 * 23 }, () => Math.floor(3 * random()));
  const found = runToEnd(labelRuns(map, size));
  const labels = labelPixels(found);

  test('a pixel is in the shape its label says', () => {
    const asked = Array.from(map, (_, pixel) => shapeAt(found, size, pixel));
    expect(asked).toEqual([...labels]);
  });

  test('its first pixel is the first with its label', () => {
    const first = Array.from(found.kinds, (_, shape) => labels.indexOf(shape));
    expect([...firstPixels(found)]).toEqual(first);
  });

  test('its outline counts every pixel side that leads out of it, the border of the picture too', () => {
    const sides = new Array<number>(found.kinds.length).fill(0);
    const label = (x: number, y: number) =>
      x < 0 || y < 0 || x >= 31 || y >= 23 ? -1 : (labels[y * 31 + x] as number);
    for (let y = 0; y < 23; y++) {
      for (let x = 0; x < 31; x++) {
        const own = label(x, y);
        const near = [label(x - 1, y), label(x + 1, y), label(x, y - 1), label(x, y + 1)];
        sides[own] = (sides[own] as number) + near.filter((other) => other !== own).length;
      }
    }
    expect([...measureOutlines(found)]).toEqual(sides.map((count) => (count * Math.PI) / 4));
  });
});
