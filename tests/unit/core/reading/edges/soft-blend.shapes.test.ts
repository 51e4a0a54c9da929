import { expect, test } from 'vitest';
import { softBlend } from '../../../../../app/core/reading/edges/soft-blend.ts';

/** Three bands of 3 px over 9 x 9 px, lying or upright: slots 0, 1, 2. */
const size = { width: 9, height: 9 };
const bands = (upright: boolean): Uint8Array =>
  Uint8Array.from({ length: 81 }, (_, i) => Math.floor((upright ? i % 9 : i / 9) / 3));

/** By band across (0..8): the partner its pixels mix with in the middle of the picture; -1 where there is none. */
function partners(upright: boolean, at: 3 | 6, reachPx: number): number[] {
  const path = upright
    ? ([
        [at, 0],
        [at, 9],
      ] as const)
    : ([
        [0, at],
        [9, at],
      ] as const);
  const [a, b] = at === 3 ? [0, 1] : [1, 2];
  const found = softBlend(bands(upright), size, [{ a, b, reachPx, path }]);
  return Array.from({ length: 9 }, (_, n) => {
    const pixel = upright ? 4 * 9 + n : n * 9 + 4;
    const entry = found.pixels.indexOf(pixel);
    return entry < 0 ? -1 : (found.partners[entry] as number);
  });
}

// However far it reaches, the two sides of an edge mix with each other and nothing else changes.
test.each([false, true])('an edge never reaches across another shape (upright: %s)', (upright) => {
  expect(partners(upright, 3, 20)).toEqual([1, 1, 1, 0, 0, 0, -1, -1, -1]);
  expect(partners(upright, 6, 20)).toEqual([-1, -1, -1, 2, 2, 2, 1, 1, 1]);
});

test.each([false, true])(
  'nor farther than it reaches: half a px and one and a half within 2 (upright: %s)',
  (upright) => {
    expect(partners(upright, 3, 2)).toEqual([-1, 1, 1, 0, 0, -1, -1, -1, -1]);
  },
);

test('shares fall evenly: at half and one and a half px of 2 to three quarters and one quarter of a half', () => {
  const found = softBlend(bands(true), size, [
    {
      a: 0,
      b: 1,
      reachPx: 2,
      path: [
        [3, 0],
        [3, 9],
      ],
    },
  ]);
  // Places lie a px apart along the edge, on whole px: pixel middles are half a px off.
  const share = (column: number): number => found.shares[found.pixels.indexOf(4 * 9 + column)] ?? 0;
  const expected = (across: number): number => Math.round(128 * (1 - Math.hypot(across, 0.5) / 2));
  expect([share(2), share(3)]).toEqual([expected(0.5), expected(0.5)]);
  expect([share(1), share(4)]).toEqual([expected(1.5), expected(1.5)]);
});

test('a map of another size than told is refused', () => {
  expect(() => softBlend(new Uint8Array(80), size, [])).toThrow(RangeError);
});
