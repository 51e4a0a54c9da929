import { describe, expect, test } from 'vitest';
import { colourDifference } from '../../../../app/core/colour/ciede2000.ts';
import { type Lab, labOfLinear } from '../../../../app/core/colour/lab.ts';
import { linearOfCode } from '../../../../app/core/colour/srgb.ts';
import {
  greyOf,
  labInPlace,
  lightnessPlane,
  referenceRgba,
} from '../../../../app/core/raster/linear-raster.ts';
import { RasterReducer } from '../../../../app/core/raster/raster-reducer.ts';
import { rasterSize } from '../../../../app/core/raster/size.ts';
import { opened, reducePicture } from '../../../support/reading/rasters.ts';
import { seeded } from '../../../support/reading/seeded.ts';
import { fullCodes, widePatches } from '../../../support/reading/wide-patches.ts';

const noise = (width: number, height: number, seed: number): Uint8Array => {
  const random = seeded(seed);
  return Uint8Array.from({ length: 4 * width * height }, (_, i) =>
    i % 4 === 3 ? 255 : Math.floor(256 * random()),
  );
};

/** The slow obvious way: each output pixel sums every source pixel by the area they share. */
function slowRed(rgba: Uint8Array, from: [number, number], to: [number, number]): number[] {
  const overlap = (i: number, o: number, source: number, output: number): number =>
    Math.max(0, Math.min((i + 1) / source, (o + 1) / output) - Math.max(i / source, o / output));
  const out: number[] = [];
  for (let y = 0; y < to[1]; y++) {
    for (let x = 0; x < to[0]; x++) {
      let sum = 0;
      let area = 0;
      for (let v = 0; v < from[1]; v++) {
        for (let u = 0; u < from[0]; u++) {
          const shared = overlap(u, x, from[0], to[0]) * overlap(v, y, from[1], to[1]);
          sum += shared * (linearOfCode[rgba[4 * (v * from[0] + u)] as number] as number);
          area += shared;
        }
      }
      out.push(sum / area);
    }
  }
  return out;
}

describe('size of the raster', () => {
  test.each([
    [4000, 3000, 1600, 1200],
    [800, 600, 800, 600],
    [5000, 1, 1600, 1],
    [1, 5000, 1, 1600],
    [20000, 500, 1600, 40],
    [1, 1, 1, 1],
  ])('%i x %i becomes %i x %i', (width, height, toWidth, toHeight) => {
    expect(rasterSize(width, height)).toEqual({ width: toWidth, height: toHeight });
  });

  test('an empty picture is refused', () => {
    expect(() => rasterSize(0, 10)).toThrow(RangeError);
  });
});

test.each([
  [
    [7, 5],
    [3, 2],
  ],
  [
    [10, 4],
    [5, 2],
  ],
  [
    [13, 9],
    [13, 4],
  ],
  [
    [6, 6],
    [1, 1],
  ],
] as [[number, number], [number, number]][])('averages areas exactly: %j to %j', (from, to) => {
  const rgba = noise(from[0], from[1], from[0]);
  const size = { width: from[0], height: from[1] };
  const { raster } = reducePicture(rgba, size, { width: to[0], height: to[1] });
  const slow = slowRed(rgba, from, to);
  for (const [i, wanted] of slow.entries()) expect(raster.red[i]).toBeCloseTo(wanted, 6);
});

test('strips of any height give the same raster', () => {
  const size = { width: 31, height: 23 };
  const rgba = noise(31, 23, 5);
  const whole = reducePicture(rgba, size, { width: 11, height: 7 });
  const reducer = new RasterReducer(size, { width: 11, height: 7 });
  for (const [from, to] of [
    [0, 1],
    [1, 9],
    [9, 9],
    [9, 22],
    [22, 23],
  ] as const) {
    reducer.addRows(rgba.subarray(from * 31 * 4, to * 31 * 4), to - from);
  }
  expect(reducer.finish()).toEqual(whole);
});

test('the same size copies exactly', () => {
  const rgba = noise(9, 4, 3);
  const { raster } = reducePicture(rgba, { width: 9, height: 4 }, { width: 9, height: 4 });
  for (let i = 0; i < 36; i++)
    expect(raster.green[i]).toBe(linearOfCode[rgba[4 * i + 1] as number]);
});

test('a flat picture stays flat at any ratio', () => {
  const rgba = new Uint8Array(4 * 37 * 29).fill(119);
  const { raster } = reducePicture(rgba, { width: 37, height: 29 }, { width: 10, height: 13 });
  expect(new Set(raster.blue)).toEqual(new Set([linearOfCode[119]]));
});

test('a fine black and white check reads L* 76', async () => {
  const { raster } = await opened('tests/fixtures/cases/checker-1px-1024.png', 512);
  const furthest = lightnessPlane(raster).reduce((most, l) => Math.max(most, Math.abs(l - 76)), 0);
  expect(furthest).toBeLessThan(1);
});

test('counts what the camera lost, within one code of the ends', () => {
  const codes = [255, 254, 253, 0, 1, 2, 128, 128];
  const rgba = Uint8Array.from(codes.flatMap((code) => [code, code, code, 255]));
  const { clipped } = reducePicture(rgba, { width: 8, height: 1 }, { width: 4, height: 1 });
  expect(clipped).toEqual({ light: 0.25, dark: 0.25 });
});

test.each([
  ['copied', 4],
  ['averaged', 2],
])('%s: an end is one of all three channels, counted strip by strip', (_, width) => {
  // Light, light, dark, dark; then four of which one channel is off an end, each another way.
  const light = [254, 255, 254, 255];
  const dark = [1, 0, 1, 255];
  const off = [
    [253, 255, 255],
    [255, 255, 253],
    [0, 2, 0],
    [2, 0, 1],
  ].flatMap((rgb) => [...rgb, 255]);
  const rows = [...light, ...light, ...dark, ...dark, ...off];
  const reducer = new RasterReducer({ width: 4, height: 4 }, { width, height: 4 });
  for (let strip = 0; strip < 2; strip++) reducer.addRows(Uint8Array.from(rows), 2);
  expect(reducer.finish().clipped).toEqual({ light: 0.25, dark: 0.25 });
  const clean = new RasterReducer({ width: 4, height: 1 }, { width, height: 1 });
  clean.addRows(new Uint8Array(16).fill(128), 1);
  expect(clean.finish().clipped).toEqual({ light: 0, dark: 0 });
});

describe('codes of Display P3', () => {
  /** The eight full colours side by side, each of so many pixels a side. */
  const full = (side: number, output: number) => {
    const source = { width: 8 * side, height: side };
    const row = fullCodes.flatMap((code) => Array.from({ length: side }, () => [...code, 255]));
    const rgba = Uint8Array.from(Array.from({ length: side }, () => row.flat()).flat());
    const reducer = new RasterReducer(source, { width: 8 * output, height: output }, 'display-p3');
    reducer.addRows(rgba, 1);
    reducer.addRows(rgba, 0);
    reducer.addRows(rgba, side - 1);
    return reducer.finish().raster;
  };
  const truth = widePatches[0]?.[1] as readonly Lab[];

  test.each([
    ['copied', 4, 4],
    ['averaged', 6, 2],
  ])('%s: every colour keeps its Lab, by the exact curve as by the table', (_, side, output) => {
    const raster = full(side, output);
    const middleOf = (i: number) => i * output + (output >> 1);
    const exact = truth.map((_, i) =>
      labOfLinear(
        raster.red[middleOf(i)] as number,
        raster.green[middleOf(i)] as number,
        raster.blue[middleOf(i)] as number,
      ),
    );
    const lightness = lightnessPlane(raster);
    const lab = labInPlace(raster);
    truth.forEach((colour, i) => {
      const tabulated = [
        lab.lightness[middleOf(i)],
        lab.a[middleOf(i)],
        lab.b[middleOf(i)],
      ] as unknown as Lab;
      expect(colourDifference(exact[i] as Lab, colour)).toBeLessThan(0.01);
      expect(colourDifference(tabulated, colour)).toBeLessThan(0.05);
      expect(Math.abs((lightness[middleOf(i)] as number) - colour[0])).toBeLessThan(0.01);
    });
  });

  test('are averaged in linear light: red and green half and half', () => {
    const reducer = new RasterReducer(
      { width: 2, height: 1 },
      { width: 1, height: 1 },
      'display-p3',
    );
    reducer.addRows(Uint8Array.of(255, 0, 0, 255, 0, 255, 0, 255), 1);
    const { red, green, blue } = reducer.finish().raster;
    expect(red[0]).toBeCloseTo(0.5, 6);
    expect(green[0]).toBeCloseTo(0.5, 6);
    expect(blue[0]).toBeCloseTo((-0.0196375546 - 0.0786360456) / 2, 6);
  });

  test('are shown clipped channel by channel, in grey by their true L*', () => {
    const raster = full(1, 1);
    const codes = (rgba: Uint8ClampedArray, i: number) => [...rgba.subarray(4 * i, 4 * i + 4)];
    const [shown, grey] = [referenceRgba(raster), greyOf(raster)];
    fullCodes.forEach((code, i) => {
      expect(codes(shown, i)).toEqual([...code, 255]);
      const light = linearOfCode[codes(grey, i)[0] as number] as number;
      const [lightness] = labOfLinear(light, light, light);
      expect(Math.abs(lightness - (truth[i] as Lab)[0])).toBeLessThan(0.3);
    });
  });
});

test('rows missing or too many are refused', () => {
  const reducer = new RasterReducer({ width: 2, height: 2 }, { width: 1, height: 1 });
  expect(() => reducer.finish()).toThrow(RangeError);
  expect(() => reducer.addRows(new Uint8Array(7), 1)).toThrow(RangeError);
  expect(() => reducer.addRows(new Uint8Array(24), 3)).toThrow(RangeError);
  expect(() => new RasterReducer({ width: 2, height: 2 }, { width: 3, height: 1 })).toThrow(
    RangeError,
  );
});
