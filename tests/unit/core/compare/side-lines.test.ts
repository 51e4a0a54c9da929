import { expect, test } from 'vitest';
import { align, alignmentTarget } from '../../../../app/core/compare/align.ts';
import { cornersOf, homographyOf, project } from '../../../../app/core/compare/homography.ts';
import { lightPyramid } from '../../../../app/core/compare/light-pyramid.ts';
import { settlePlace } from '../../../../app/core/compare/settle-place.ts';
import { seenSides } from '../../../../app/core/compare/side-lines.ts';
import { emptyRaster, type LinearRaster } from '../../../../app/core/raster/linear-raster.ts';

// A sheet of the tests' own: flat but for a few strokes in its upper half, so that the picture says little of its
// lower corners; limits are the test's own figures (own).
const size = { width: 240, height: 180 };

function filled(
  width: number,
  height: number,
  lightAt: (x: number, y: number) => number,
): LinearRaster {
  const raster = emptyRaster(width, height);
  for (let y = 0, i = 0; y < height; y++)
    for (let x = 0; x < width; x++, i++)
      raster.red[i] = raster.green[i] = raster.blue[i] = lightAt(x + 0.5, y + 0.5);
  return raster;
}

const stroke = (x: number, y: number): boolean =>
  y > 30 && y < 70 && [50, 95, 120, 170, 200].some((at, n) => Math.abs(x - at - 0.2 * n * y) < 5);
const sheetAt = (x: number, y: number): number => (stroke(x, y) ? 0.1 : 0.55);
const offset = [50, 40] as const;
const bordered = (border: number, board: number) =>
  filled(340, 260, (px, py) => {
    const [x, y] = [px - offset[0], py - offset[1]];
    const out = Math.max(-x, -y, x - size.width, y - size.height);
    if (out < 0) return sheetAt(x, y);
    return out < border ? 0.9 : board;
  });
const truth = cornersOf(size.width, size.height).map(([x, y]) => [x + offset[0], y + offset[1]]);
const start = homographyOf(cornersOf(size.width, size.height), [
  [50.5, 40.4],
  [290.6, 39.5],
  [291.5, 222.5],
  [48.5, 222.8],
]) as Float64Array;

/** How far the corners are off before and after the outline is taken in, px. */
function errorsOf(photo: LinearRaster) {
  const planes = lightPyramid(photo);
  const target = alignmentTarget(filled(size.width, size.height, sheetAt), 0.05);
  const found = align(planes, start, target, 8);
  const sides = seenSides(planes, found.toPhoto, size);
  const settled = settlePlace(found, sides, size);
  const off = (h: Float64Array): number =>
    Math.max(
      ...cornersOf(size.width, size.height).map(([x, y], n) => {
        const [u, v] = project(h, x, y);
        return Math.hypot(u - (truth[n]?.[0] ?? 0), v - (truth[n]?.[1] ?? 0));
      }),
    );
  const alone = settlePlace(found, [], size);
  return { sides, settled, alone, before: off(found.toPhoto), after: off(settled.toPhoto) };
}

test('the outline against a white border says where a flat lower half ends', () => {
  const { sides, settled, alone, before, after } = errorsOf(bordered(12, 0.2));
  expect(sides.map((lines) => lines.length > 0)).toEqual([true, true, true, true]);
  expect(settled).toMatchObject({ agreeing: 4, contradicting: 0 });
  expect(after).toBeLessThan(0.8);
  expect(after).toBeLessThan(before);
  expect(settled.doubt).toBeLessThan(alone.doubt);
});

test('a narrow border shows two lines a side, of which the inner one is taken', () => {
  const { settled, after } = errorsOf(bordered(4, 0.2));
  expect(settled.agreeing).toBe(4);
  expect(after).toBeLessThan(0.8);
});

test('where nothing shows along the sides the picture alone stands', () => {
  const { sides, settled, alone } = errorsOf(
    filled(340, 260, (px, py) => sheetAt(px - 50, py - 40)),
  );
  expect(sides.flat()).toEqual([]);
  expect(settled.doubt).toBe(alone.doubt);
});
