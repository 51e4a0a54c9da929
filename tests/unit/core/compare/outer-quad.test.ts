import { expect, test } from 'vitest';
import { outerQuad } from '../../../../app/core/compare/outer-quad.ts';

// Quadrangles drawn by the tests' own means; how near they are found is their own limit too.
type Points = readonly (readonly [number, number])[];

/** A mask of what lies within a quadrangle, clockwise, its rim ragged by up to a pixel. */
function maskOf(corners: Points, width: number, height: number): Uint8Array {
  const mask = new Uint8Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const ragged = ((x * 7 + y * 13) % 5) / 5;
      const inside = corners.every(([ax, ay], n) => {
        const [bx, by] = corners[(n + 1) % 4] as readonly [number, number];
        const side = (bx - ax) * (y + 0.5 - ay) - (by - ay) * (x + 0.5 - ax);
        return side / Math.hypot(bx - ax, by - ay) > ragged;
      });
      mask[y * width + x] = inside ? 1 : 0;
    }
  return mask;
}

/** How far the farthest corner lies from the nearest one found. */
const farthest = (found: Points, corners: Points): number =>
  Math.max(
    ...corners.map(([x, y]) => Math.min(...found.map(([u, v]) => Math.hypot(u - x, v - y)))),
  );

test('a sheet seen from the side is found to a pixel or two, though its rim is ragged', () => {
  const corners: Points = [
    [60, 40],
    [330, 62],
    [350, 250],
    [38, 230],
  ];
  const found = outerQuad(maskOf(corners, 400, 300), { width: 400, height: 300 });
  expect(farthest(found ?? [], corners)).toBeLessThan(4);
});

test('a corner beyond the edge of the photo is drawn on to', () => {
  const corners: Points = [
    [80, 40],
    [430, 55],
    [360, 260],
    [60, 240],
  ];
  const found = outerQuad(maskOf(corners, 400, 300), { width: 400, height: 300 });
  expect(farthest(found ?? [], corners)).toBeLessThan(8);
});

test('corners are those of the pixels: a clean one is found exactly', () => {
  const size = { width: 100, height: 40 };
  // Ten pixels below the top it begins 21 px wide, and grows by one to either side with every row.
  const wider = Uint8Array.from({ length: size.width * size.height }, (_, i) => {
    const [x, row] = [i % size.width, Math.floor(i / size.width) - 10];
    return row >= 0 && row < 20 && x >= 40 - row && x <= 60 + row ? 1 : 0;
  });
  const corners = [
    [20, 30],
    [40, 10],
    [61, 10],
    [81, 30],
  ];
  const inOrder = (found: Points | null) => [...(found ?? [])].sort((one, two) => one[0] - two[0]);
  expect(inOrder(outerQuad(wider, size))).toEqual(corners);
  const upsideDown = corners.map(([x, y]) => [x, 40 - (y as number)]);
  expect(inOrder(outerQuad(wider.toReversed(), size))).toEqual(
    upsideDown.map(([x, y]) => [100 - (x as number), y]).reverse(),
  );
});

test('nothing, or a spot, is no sheet', () => {
  const size = { width: 40, height: 30 };
  expect(outerQuad(new Uint8Array(1200), size)).toBeNull();
  expect(
    outerQuad(
      Uint8Array.from({ length: 1200 }, (_, i) => (i === 444 ? 1 : 0)),
      size,
    ),
  ).toBeNull();
});
