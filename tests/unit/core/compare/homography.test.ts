import fc from 'fast-check';
import perspectiveTransform from 'perspective-transform';
import { expect, test } from 'vitest';
import {
  type Corners,
  composed,
  cornersOf,
  homographyOf,
  isConvex,
  project,
} from '../../../../app/core/compare/homography.ts';

/** A rectangle whose corners lie up to a quarter of its side off. */
const anyCorners = fc
  .array(fc.double({ min: -0.24, max: 0.24, noNaN: true }), { minLength: 8, maxLength: 8 })
  .map((off): Corners => {
    const at = (n: number, x: number, y: number): readonly [number, number] => [
      300 * (x + (off[2 * n] as number)),
      200 * (y + (off[2 * n + 1] as number)),
    ];
    return [at(0, 0, 0), at(1, 1, 0), at(2, 1, 1), at(3, 0, 1)];
  })
  .filter(isConvex);

test('takes points where perspective-transform 1.1.3 (npm, MIT) takes them', () => {
  fc.assert(
    fc.property(anyCorners, anyCorners, (from, to) => {
      const own = homographyOf(from, to);
      const peer = perspectiveTransform(from.flat(), to.flat());
      for (const [x, y] of [...from, [150, 100], [40, 170]] as const) {
        const [u, v] = project(own as Float64Array, x, y);
        const [peerU, peerV] = peer.transform(x, y);
        expect(Math.hypot(u - peerU, v - peerV)).toBeLessThan(1e-3);
      }
    }),
  );
});

test('there and back again is nowhere', () => {
  fc.assert(
    fc.property(anyCorners, (to) => {
      const from = cornersOf(300, 200);
      const there = homographyOf(from, to) as Float64Array;
      const back = homographyOf(to, from) as Float64Array;
      const [x, y] = project(composed(back, there), 77, 133);
      expect(Math.hypot(x - 77, y - 133)).toBeLessThan(1e-6);
    }),
  );
});

test('corners that do not go round a sheet give none', () => {
  const crossed: Corners = [
    [0, 0],
    [1, 1],
    [1, 0],
    [0, 1],
  ];
  expect(isConvex(crossed)).toBe(false);
  expect(homographyOf(cornersOf(2, 1), crossed)).toBe(null);
});

test('three corners in a line are no sheet, whichever way round', () => {
  const inLine: Corners = [
    [0, 0],
    [1, 0],
    [2, 0],
    [1, 1],
  ];
  expect(isConvex(inLine)).toBe(false);
  expect(isConvex(inLine.toReversed() as unknown as Corners)).toBe(false);
});
