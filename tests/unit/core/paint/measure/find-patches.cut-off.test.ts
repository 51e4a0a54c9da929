import { describe, expect, test } from 'vitest';
import type { Point } from '../../../../../app/core/colour/lab.ts';
import { findPatches } from '../../../../../app/core/paint/measure/find-patches.ts';
import { emptyRaster, type LinearRaster } from '../../../../../app/core/raster/linear-raster.ts';
import { drawnLabs, drawnSheet } from '../../../../support/paint/drawn-sheet.ts';

const whole = drawnSheet(drawnLabs('pbr7-burnt-sienna'), {
  light: [0.75, 0.75, 0.75],
  fall: [0, 0],
  turnDegrees: 0,
  noise: 0,
  table: 0,
});
const framesOf = (raster: LinearRaster) =>
  findPatches(raster, null).patches.map(({ frame }) => frame);
const frames = framesOf(whole);

/** The photo from one corner, in px, up to but not including the other. */
function cropped(left: number, top: number, right: number, bottom: number): LinearRaster {
  const raster = emptyRaster(right - left, bottom - top);
  for (const plane of ['red', 'green', 'blue'] as const) {
    for (let y = top; y < bottom; y++)
      for (let x = left; x < right; x++)
        raster[plane][(y - top) * raster.width + x - left] = whole[plane][
          y * whole.width + x
        ] as number;
  }
  return raster;
}

const { width, height } = whole;
const middleX = ({ left, width: wide }: (typeof frames)[0]) =>
  Math.round((left + wide / 2) * width);
const middleY = ({ top, height: high }: (typeof frames)[0]) =>
  Math.round((top + high / 2) * height);
const least = Math.min(...frames.map(middleX));
const most = Math.max(...frames.map(middleX));
const highest = Math.min(...frames.map(middleY));
const lowest = Math.max(...frames.map(middleY));

describe('a patch the photo cuts off is none', () => {
  test.each([
    ['left', [least, 0, width, height], ([x]: Point) => x > least + 2],
    ['right', [0, 0, most, height], ([x]: Point) => x < most - 2],
    ['top', [0, highest, width, height], ([, y]: Point) => y > highest + 2],
    ['bottom', [0, 0, width, lowest], ([, y]: Point) => y < lowest - 2],
  ] as const)('at its %s', (_, [left, top, right, bottom], stays) => {
    const wanted = frames.filter((frame) => stays([middleX(frame), middleY(frame)])).length;
    expect(wanted).toBeGreaterThan(0);
    expect(wanted).toBeLessThan(frames.length);
    expect(framesOf(cropped(left, top, right, bottom))).toHaveLength(wanted);
  });
});
