import { expect, test } from 'vitest';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { shapeFacts, tooSmallShare } from '../../../../../app/core/reading/shapes/list-slots.ts';

test('every shape has its kind, its area and its outline', () => {
  const map = Uint8Array.of(1, 1, 2, 1, 1, 2);
  const { kinds, areasPx, outlinesPx } = runToEnd(shapeFacts(map, { width: 3, height: 2 }));
  expect([[...kinds], [...areasPx]]).toEqual([
    [1, 2],
    [4, 2],
  ]);
  expect([...outlinesPx]).toEqual([2 * Math.PI, 1.5 * Math.PI]);
});

test('too small is under an area or a side', () => {
  const facts = {
    areasPx: Int32Array.of(100, 30, 200),
    outlinesPx: Float64Array.of(40, 22, 402),
  };
  expect(tooSmallShare(facts, 50, 0)).toBeCloseTo(30 / 330, 9);
  expect(tooSmallShare(facts, 0, 2)).toBeCloseTo(200 / 330, 9);
  expect(tooSmallShare(facts, 0, 0)).toBe(0);
});
