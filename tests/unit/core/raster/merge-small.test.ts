import { expect, test } from 'vitest';
import { runToEnd } from '../../../../app/core/numeric/run-to-end.ts';
import { labelRuns } from '../../../../app/core/raster/label-shapes.ts';
import { mergeSmall } from '../../../../app/core/raster/merge-small.ts';
import { seeded } from '../../../support/reading/seeded.ts';

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
  runToEnd(mergeSmall(map, size, { leastPx, difference }));
  return rowsOf(map, size.width);
};

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
  runToEnd(mergeSmall(map, size, { leastPx, difference }));
  expect(rowsOf(map, 7)[2]).toBe('3399333');
});

test('where shapes must be larger, what is small for its place goes', () => {
  const { map, size } = mapOf('1111111', '1211121', '1111111');
  const timesAt = (x: number): number => (x > 3 ? 2 : 1);
  runToEnd(mergeSmall(map, size, { leastPx: [0, 0, 1, 0], difference: () => 1, timesAt }));
  expect(rowsOf(map, 7)[1]).toBe('1211111');
});

test('kinds that must not become one stay apart', () => {
  const { map, size } = mapOf('112', '111');
  const difference = () => Number.POSITIVE_INFINITY;
  runToEnd(mergeSmall(map, size, { leastPx: [9, 9, 9], difference }));
  expect(rowsOf(map, 3)).toEqual(['112', '111']);
});

test('seeded noise: nothing too small is left, all kinds are old ones, twice the same', () => {
  const random = seeded(12);
  const size = { width: 60, height: 45 };
  const noise = Uint8Array.from({ length: 2700 }, () => 1 + Math.floor(4 * random()));
  const run = (): Uint8Array => {
    const map = noise.slice();
    const difference = (kind: number, other: number) => Math.abs(kind - other);
    runToEnd(mergeSmall(map, size, { leastPx: new Array(5).fill(30), difference }));
    return map;
  };
  const map = run();
  const { areasPx, kinds } = runToEnd(labelRuns(map, size));
  expect(Math.min(...areasPx)).toBeGreaterThanOrEqual(30);
  expect([...kinds].every((kind) => kind >= 1 && kind <= 4)).toBe(true);
  expect(run()).toEqual(map);
});

test('a picture smaller than the smallest shape stays as one', () => {
  expect(merged(50, '1')).toEqual(['1']);
  expect(merged(50, '12')).toHaveLength(1);
});
