import { describe, expect, test } from 'vitest';
import { labelShapes } from '../../../../../app/core/raster/label-shapes.ts';
import { mergeSmall } from '../../../../../app/core/raster/merge-small.ts';
import { shortSide } from '../../../../../app/core/raster/sides.ts';
import { shapeFacts, tooSmallShare } from '../../../../../app/core/reading/shapes/list-slots.ts';
import { keptBands } from '../../../../../app/core/reading/values/list-bands.ts';
import { drained } from '../../../../support/reading/drained.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

/** A map from rows of digits. */
const mapOf = (...rows: string[]) => ({
  map: Uint8Array.from([...rows.join('')], Number),
  size: { width: rows[0]?.length ?? 0, height: rows.length },
});
const rowsOf = (map: Uint8Array, width: number): string[] =>
  Array.from({ length: map.length / width }, (_, y) =>
    map.slice(y * width, (y + 1) * width).join(''),
  );

const merged = (least: number, ...rows: string[]): string[] => {
  const { map, size } = mapOf(...rows);
  const leastPx = new Array(10).fill(least);
  const difference = (kind: number, other: number) => Math.abs(kind - other);
  drained(mergeSmall(map, size, { leastPx, difference }));
  return rowsOf(map, size.width);
};

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
    expect(drained(labelShapes(map, size)).kinds).toHaveLength(9);
  });

  test('a shape that closes late is one', () => {
    const { map, size } = mapOf('10101', '10101', '11111');
    const { labels, kinds, areasPx } = drained(labelShapes(map, size));
    expect([...labels]).toEqual([0, 1, 0, 2, 0, 0, 1, 0, 2, 0, 0, 0, 0, 0, 0]);
    expect([[...kinds], [...areasPx]]).toEqual([
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
      const found = drained(labelShapes(map, { width, height }));
      expect([...found.labels]).toEqual(flooded(map, width));
    }
  });
});

describe('form', () => {
  test('short side of a rectangle, from its area and outline', () => {
    expect(shortSide(12, 14)).toBeCloseTo(3, 9);
    expect(shortSide(25, 20)).toBeCloseTo(5, 9);
    expect(shortSide(25, 17)).toBe(5);
  });

  test('outline counts the picture border', () => {
    const { map, size } = mapOf('11', '11');
    expect(drained(shapeFacts(map, size)).outlinesPx[0]).toBeCloseTo(8 * (Math.PI / 4), 5);
  });

  test('too small is under an area or a side', () => {
    const facts = {
      areasPx: Int32Array.of(100, 30, 200),
      outlinesPx: Float32Array.of(40, 22, 402),
    };
    expect(tooSmallShare(facts, 50, 0)).toBeCloseTo(30 / 330, 9);
    expect(tooSmallShare(facts, 0, 2)).toBeCloseTo(200 / 330, 9);
    expect(tooSmallShare(facts, 0, 0)).toBe(0);
  });
});

describe('merging', () => {
  test('a small shape goes to the neighbour nearest in kind', () => {
    expect(merged(3, '11999', '11299', '11999')).toEqual(['11999', '11199', '11999']);
  });

  test('of equally near ones to the longest border', () => {
    expect(merged(3, '11333', '11233', '11333')).toEqual(['11333', '11333', '11333']);
  });

  test('shapes that meet through a merged one count together', () => {
    expect(merged(9, '4444', '4444', '5599', '4444', '4444')).toEqual(new Array(5).fill('4444'));
  });

  test('large shapes stay', () => {
    const rows = ['1112', '1112', '3332', '3332'];
    expect(merged(4, ...rows)).toEqual(rows);
  });

  test('a smaller shape that is kept does not swallow what lies around it', () => {
    const { map, size } = mapOf('3333333', '3222233', '3299233', '3222233', '3333333');
    const leastPx = [0, 0, 20, 4, 0, 0, 0, 0, 0, 2];
    // Kind 2 is nearer to 9 than to 3 here.
    const difference = (kind: number, other: number) => (kind + other === 11 ? 0 : 1);
    drained(mergeSmall(map, size, { leastPx, difference }));
    expect(rowsOf(map, 7)[2]).toBe('3399333');
  });

  test('kinds that must not become one stay apart', () => {
    const { map, size } = mapOf('112', '111');
    const difference = () => Number.POSITIVE_INFINITY;
    drained(mergeSmall(map, size, { leastPx: [9, 9, 9], difference }));
    expect(rowsOf(map, 3)).toEqual(['112', '111']);
  });

  test('seeded noise: nothing too small is left, all kinds are old ones, twice the same', () => {
    const random = seeded(12);
    const size = { width: 60, height: 45 };
    const noise = Uint8Array.from({ length: 2700 }, () => 1 + Math.floor(4 * random()));
    const run = (): Uint8Array => {
      const map = noise.slice();
      const difference = (kind: number, other: number) => Math.abs(kind - other);
      drained(mergeSmall(map, size, { leastPx: new Array(5).fill(30), difference }));
      return map;
    };
    const map = run();
    const { areasPx, kinds } = drained(labelShapes(map, size));
    expect(Math.min(...areasPx)).toBeGreaterThanOrEqual(30);
    expect([...kinds].every((kind) => kind >= 1 && kind <= 4)).toBe(true);
    expect(run()).toEqual(map);
  });

  test('a picture smaller than the smallest shape stays as one', () => {
    expect(merged(50, '1')).toEqual(['1']);
    expect(merged(50, '12')).toHaveLength(1);
  });
});

test('a band that lost all its shapes leaves its range to its neighbours', () => {
  expect(keptBands([0, 5, 0, 7, 9], [20, 40, 70])).toEqual([
    { was: 1, from: 55, to: 100 },
    { was: 3, from: 20, to: 55 },
    { was: 4, from: 0, to: 20 },
  ]);
  expect(keptBands([0, 0, 3], [50])).toEqual([{ was: 2, from: 0, to: 100 }]);
});
