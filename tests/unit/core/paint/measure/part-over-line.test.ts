import { describe, expect, test } from 'vitest';
import {
  frameOfBox,
  type PaintedPixels,
  type PixelBox,
  partOverLine,
} from '../../../../../app/core/paint/measure/part-over-line.ts';

// A patch of 30 by 30 px at (20, 10) on a raster of 90 by 60, a line through it: drawn by the tests, so that where its
// parts lie is counted by hand; what a line must be is as the file says it, tried on either side (own).
interface Drawn {
  /** The line: its upper row at its left end, rows it falls by to its right end, thickness, from where to where, L*. */
  readonly top?: number;
  readonly fall?: number;
  readonly thick?: number;
  readonly from?: number;
  readonly to?: number;
  readonly light?: number;
}
const size = { width: 90, height: 60 };
const patch = { left: 20, top: 10, width: 30, height: 30 };

function drawn({ top = 22, fall = 0, thick = 6, from = 5, to = 65, light = 20 }: Drawn = {}) {
  const mask = new Uint8Array(size.width * size.height);
  const lightness = new Float32Array(mask.length).fill(95);
  for (let y = 0, i = 0; y < size.height; y++)
    for (let x = 0; x < size.width; x++, i++) {
      const at = top + Math.round((fall * (x - from)) / (to - 1 - from));
      const isLine = x >= from && x < to && y >= at && y < at + thick;
      const isPatch =
        x >= patch.left && x < patch.left + 30 && y >= patch.top && y < patch.top + 30;
      if (!isLine && !isPatch) continue;
      mask[i] = 1;
      lightness[i] = isLine ? light : 60;
    }
  const left = Math.min(from, patch.left);
  const box = { left, top: 10, width: Math.max(to, 50) - left, height: 30 };
  return { pixels: { ...size, mask, lightness }, box };
}
const parted = (of: Drawn = {}) => {
  const { pixels, box } = drawn(of);
  return partOverLine(pixels, box);
};
const boxOf = (left: number, top: number, width: number, height: number): PixelBox => ({
  ...{ left: expect.closeTo(left, 6), top: expect.closeTo(top, 6) },
  ...{ width: expect.closeTo(width, 6), height: expect.closeTo(height, 6) },
});

describe('a patch over a black line', () => {
  test('is parted: eight tenths of its breadth above the line, of the line in it, and of the bare line', () => {
    expect(parted()).toEqual({
      // From its upper side to a px above the line.
      paper: boxOf(23, 10, 24, 11),
      over: boxOf(23, 22.6, 24, 4.8),
      line: boxOf(6.5, 22.6, 12, 4.8),
    });
  });

  test('its part on paper is the larger one, above or below', () => {
    // Of 30 rows 4 lie above a line of 6 that begins at the 5th; of 20 below one px is left out, as of those above.
    expect(parted({ top: 14 })?.paper).toEqual(boxOf(23, 21, 24, 19));
    expect(parted({ top: 30 })?.paper).toEqual(boxOf(23, 10, 24, 19));
  });

  test('the bare line is looked at where it sticks out farther', () => {
    expect(parted({ to: 80 })?.line).toEqual(boxOf(53, 22.6, 24, 4.8));
    expect(parted({ from: 0 })?.line).toEqual(boxOf(2, 22.6, 16, 4.8));
  });

  test('it may stick out on one side alone, by 3 px at least', () => {
    expect(parted({ to: 50 })?.over).toEqual(boxOf(23, 22.6, 24, 4.8));
    expect(parted({ from: 20 })?.line.left).toBeGreaterThan(50);
    expect(parted({ from: 20, to: 52 })).toBeNull();
    expect(parted({ from: 20, to: 53 })).not.toBeNull();
    expect(parted({ from: 20, to: 50 })).toBeNull();
  });

  test('where it is a little aslant it is taken between its ends', () => {
    const aslant = parted({ top: 20, fall: 6 });
    // From row 20 to 26: in the middle of the patch, half way along it, at 23 to 29.
    const over = aslant?.over;
    expect(Math.abs(Number(over?.top) + Number(over?.height) / 2 - 26)).toBeLessThan(0.8);
    // With the right end twice as far away the middle lies a third of the way.
    const far = parted({ top: 20, fall: 6, to: 86 })?.over;
    const wanted = 20 + (6 * (35 - 5)) / 80 + 3;
    expect(Math.abs(Number(far?.top) + Number(far?.height) / 2 - wanted)).toBeLessThan(0.8);
  });

  test('upright it is parted likewise', () => {
    const { pixels, box } = drawn({ to: 80 });
    const turn = (plane: Uint8Array | Float32Array): number[] =>
      Array.from({ length: plane.length }, (_, i) =>
        Number(plane[(i % size.height) * size.width + Math.floor(i / size.height)]),
      );
    const turned: PaintedPixels = {
      ...{ width: size.height, height: size.width },
      mask: Uint8Array.from(turn(pixels.mask)),
      lightness: Float32Array.from(turn(pixels.lightness)),
    };
    const swapped = ({ left, top, width, height }: PixelBox): PixelBox =>
      boxOf(top, left, height, width);
    const level = partOverLine(pixels, box);
    if (!level) throw new Error('not parted');
    const upright = { left: box.top, top: box.left, width: box.height, height: box.width };
    expect(partOverLine(turned, upright)).toEqual({
      paper: swapped(level.paper),
      over: swapped(level.over),
      line: swapped(level.line),
    });
  });
});

describe('no line', () => {
  test('is what is not black, L* 45, or thinner than 3 px, or thicker than half of the patch', () => {
    expect(parted({ light: 46 })).toBeNull();
    expect(parted({ light: 44 })).not.toBeNull();
    expect(parted({ thick: 2 })).toBeNull();
    expect(parted({ thick: 3 })).not.toBeNull();
    expect(parted({ top: 12, thick: 15 })).not.toBeNull();
    expect(parted({ top: 12, thick: 16 })).toBeNull();
  });

  test('is in a patch by itself', () => {
    const { pixels } = drawn({ from: 20, to: 50, light: 60 });
    expect(partOverLine(pixels, patch)).toBeNull();
  });
});

test('a box is a frame of the photo in shares of its sides', () => {
  expect(frameOfBox({ left: 9, top: 6, width: 45, height: 15 }, size)).toEqual({
    left: 0.1,
    top: 0.1,
    width: 0.5,
    height: 0.25,
  });
});
