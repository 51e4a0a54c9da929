import { describe, expect, test } from 'vitest';
import { lightPyramid } from '../../../../app/core/compare/light-pyramid.ts';
import { type SeenSide, seenSides } from '../../../../app/core/compare/side-lines.ts';
import { emptyRaster } from '../../../../app/core/raster/linear-raster.ts';

// One grey sheet of 200 by 120 px in a photo of 300 by 220, 50 px from its left and top; its outline is drawn where
// the tests say, to a part of a px by the share of it that a pixel holds. Limits are the tests' own figures (own).
const size = { width: 200, height: 120 };
const [left, top] = [50, 50];
const toPhoto = Float64Array.of(1, 0, left, 0, 1, top, 0, 0, 1);

type Outside = readonly [above: number, right: number, below: number, left: number];

/** How far outwards of the sheet a place of it lies, by side; the greatest of them is how far beside the sheet it is. */
const beyond = (x: number, y: number): Outside => [-y, x - size.width, y - size.height, -x];

/** A photo whose light falls to `outer` where a place lies farther out than `offsetAt` says, side by side. */
function photoOf(offsetAt: (side: number, along: number) => number, inner = 0.3, outer = 0.6) {
  const raster = emptyRaster(300, 220);
  for (let i = 0; i < raster.red.length; i++) {
    const [x, y] = [(i % 300) + 0.5 - left, Math.floor(i / 300) + 0.5 - top];
    // What share of the pixel lies outside: a ramp one px wide about the outline, of all sides the greatest.
    const shares = beyond(x, y).map((out, side) => {
      const along = side % 2 === 0 ? x / size.width : y / size.height;
      return Math.min(1, Math.max(0, out - offsetAt(side, along) + 0.5));
    });
    const share = Math.max(...shares);
    // As the eye has it, for there steps are measured.
    const seen = Math.cbrt(inner) + share * (Math.cbrt(outer) - Math.cbrt(inner));
    raster.red[i] = raster.green[i] = raster.blue[i] = seen ** 3;
  }
  return lightPyramid(raster);
}
const sidesOf = (offsetAt: (side: number, along: number) => number, inner = 0.3, outer = 0.6) =>
  seenSides(photoOf(offsetAt, inner, outer), toPhoto, size);
const best = (lines: readonly SeenSide[] | undefined): SeenSide => {
  const [first] = [...(lines ?? [])].sort((one, two) => two.shown - one.shown);
  if (!first) throw new Error('no line');
  return first;
};

describe('the outline of a painting', () => {
  test.each([0, 1.4, -2.3])('%d px beyond where it was taken to be is seen there', (off) => {
    for (const lines of sidesOf(() => off)) {
      const { offsets, shown } = best(lines);
      expect(shown).toBeGreaterThan(0.8);
      for (const found of offsets) expect(Math.abs(found - off)).toBeLessThan(0.15);
    }
  });

  test('each side by itself, outwards being up, right, down, left', () => {
    const sides = sidesOf((side) => side - 1.5);
    for (const [side, lines] of sides.entries()) {
      const { offsets, outwards } = best(lines);
      for (const found of offsets) expect(Math.abs(found - (side - 1.5))).toBeLessThan(0.15);
      expect(outwards).toEqual(
        [
          [0, -1],
          [1, 0],
          [0, 1],
          [-1, 0],
        ][side],
      );
    }
  });

  test('aslant its ends are off each by their own', () => {
    // From 2 px inside at the one end of a side to 2 px outside at the other.
    for (const [side, lines] of sidesOf((_, along) => 4 * along - 2).entries()) {
      const { ends, offsets } = best(lines);
      for (const [n, [x, y]] of ends.entries()) {
        const along = side % 2 === 0 ? x / size.width : y / size.height;
        expect(Math.abs(Number(offsets[n]) - (4 * along - 2))).toBeLessThan(0.25);
        // The ends lie on the side itself, near either end of it.
        expect([along < 0.2, along > 0.8]).toEqual([n === 0, n === 1]);
        const across = side % 2 === 0 ? y / size.height : x / size.width;
        expect(across).toBe(side === 1 || side === 2 ? 1 : 0);
      }
    }
  });

  test('is seen whether it is lighter outside or darker', () => {
    for (const lines of sidesOf(() => 1, 0.6, 0.3))
      for (const found of best(lines).offsets) expect(Math.abs(found - 1)).toBeLessThan(0.15);
  });

  test('less of it shows along a side of which a part is hidden; less than half is no line', () => {
    const shownOf = (part: number) =>
      // Beyond the part the step lies far outside of what is looked at.
      sidesOf((_, along) => (along < part ? 0 : 30))[0] ?? [];
    expect(best(shownOf(0.75)).shown).toBeGreaterThan(0.6);
    expect(best(shownOf(0.75)).shown).toBeLessThan(best(shownOf(1)).shown - 0.15);
    expect(shownOf(0.4)).toEqual([]);
  });
});

describe('no outline', () => {
  test('where nothing shows, or no more than grain', () => {
    expect(sidesOf(() => 0, 0.3, 0.3)).toEqual([[], [], [], []]);
    // A step of 0.004 of the root of the light.
    const grain = (Math.cbrt(0.3) + 0.004) ** 3;
    expect(sidesOf(() => 0, 0.3, grain)).toEqual([[], [], [], []]);
  });

  test('along a side that runs off the photo; the others are looked at', () => {
    const offRight = Float64Array.of(1, 0, 97, 0, 1, top, 0, 0, 1);
    const sides = seenSides(
      photoOf(() => 0),
      offRight,
      size,
    );
    expect(sides[1]).toEqual([]);
    expect(sides[0]?.length).toBeGreaterThan(0);
  });
});

/** Lines seen where the light goes from 0.1 to the given ones, so many px beyond the sheet each. */
const linesOf = (steps: readonly (readonly [from: number, light: number])[]) => {
  const raster = emptyRaster(300, 220);
  for (let i = 0; i < raster.red.length; i++) {
    const out = Math.max(...beyond((i % 300) + 0.5 - left, Math.floor(i / 300) + 0.5 - top));
    const light = steps.findLast(([from]) => out >= from)?.[1] ?? 0.1;
    raster.red[i] = raster.green[i] = raster.blue[i] = light;
  }
  return seenSides(lightPyramid(raster), toPhoto, size).map((lines) =>
    lines.map(({ offsets }) => (offsets[0] + offsets[1]) / 2),
  );
};

describe('several lines along a side', () => {
  test.each([
    ['lighter and lighter', 0.25, 0.6],
    ['lighter, then darker', 0.6, 0.05],
  ])('%s: both are seen', (_, border, board) => {
    for (const offsets of linesOf([
      [-2, border],
      [3, board],
    ]))
      for (const wanted of [-2, 3])
        expect(offsets.some((off) => Math.abs(off - wanted) < 0.3)).toBe(true);
  });

  test('one step is one line', () => {
    for (const offsets of linesOf([[1, 0.6]])) expect(offsets).toHaveLength(1);
  });
});

test('a line is sought as far off as a fortieth of the long side, 5 px here', () => {
  expect(linesOf([[7, 0.6]])).toEqual([[], [], [], []]);
});
