import { describe, expect, test } from 'vitest';
import { runToEnd } from '../../../../app/core/numeric/run-to-end.ts';
import { gaussianBlur } from '../../../../app/core/raster/gaussian-blur.ts';
import { edgePreserving, simplify } from '../../../../app/core/raster/simplify.ts';
import { painted } from '../../../support/reading/rasters.ts';
import { seeded } from '../../../support/reading/seeded.ts';

const random = seeded(12);
const { raster } = painted(40, 30, () => {
  const code = 100 + Math.round(60 * random());
  return [code, code, code];
});
const simplified = (pxPerMm: number): Float32Array => runToEnd(simplify(raster, pxPerMm)).lightness;
const apart = (one: Float32Array, other: Float32Array): number =>
  one.reduce((most, value, i) => Math.max(most, Math.abs(value - (other[i] as number))), 0);

test('the brush is 2 mm wide, and never narrower than a pixel', () => {
  const onePixel = simplified(0.5);
  // Coarser pictures: a pixel is more than a brush.
  for (const pxPerMm of [0.4, 0.1]) expect(apart(simplified(pxPerMm), onePixel)).toBe(0);
  // Finer ones are smoothed more at once: the first blur is a pixel wide for all of these.
  for (const pxPerMm of [0.75, 1, 2])
    expect(apart(simplified(pxPerMm), onePixel)).toBeGreaterThan(0.1);
});

const size = { width: 41, height: 33 };
const noisePlane = (seed: number, { width, height } = size): Float32Array => {
  const random = seeded(seed);
  return Float32Array.from({ length: width * height }, () => random());
};
const mirrored = (plane: Float32Array, { width } = size): Float32Array =>
  plane.map((_, i) => plane[Math.floor(i / width) * width + width - 1 - (i % width)] as number);
const flipped = (plane: Float32Array, { width, height } = size): Float32Array =>
  plane.map((_, i) => plane[(height - 1 - Math.floor(i / width)) * width + (i % width)] as number);
const furthest = (one: Float32Array, other: Float32Array): number =>
  one.reduce((most, value, i) => Math.max(most, Math.abs(value - (other[i] as number))), 0);

type Filter = (plane: Float32Array, at?: typeof size) => Float32Array;
const blurred =
  (sigma: number): Filter =>
  (plane, at = size) => {
    const copy = plane.slice();
    runToEnd(gaussianBlur([copy], at, sigma));
    return copy;
  };
const smoothed: Filter = (plane, at = size) => {
  const copy = plane.slice();
  runToEnd(edgePreserving([copy], [copy], at, { spacePx: 5, tone: 0.4 }));
  return copy;
};

describe.each([
  ['blur of 1 px', blurred(1)],
  ['blur of 2.1 px', blurred(2.1)],
  ['blur wider than the picture', blurred(60)],
  ['edge-preserving smoothing', smoothed],
] as [string, Filter][])('%s', (_, filter) => {
  test('flat stays flat', () => {
    const flat = new Float32Array(size.width * size.height).fill(0.37);
    expect(furthest(filter(flat), flat)).toBeLessThan(1e-6);
  });

  test('mirrored in gives mirrored out, both ways', () => {
    const plane = noisePlane(2);
    expect(furthest(filter(mirrored(plane)), mirrored(filter(plane)))).toBeLessThan(1e-5);
    expect(furthest(filter(flipped(plane)), flipped(filter(plane)))).toBeLessThan(1e-5);
  });

  test('stays within the range of the input', () => {
    for (const value of filter(noisePlane(3))) {
      expect(value).toBeGreaterThanOrEqual(0);
      expect(value).toBeLessThanOrEqual(1);
    }
  });

  test.each([
    [1, 1],
    [1, 9],
    [9, 1],
    [2, 3],
  ])('%i x %i px', (width, height) => {
    const at = { width, height };
    expect(filter(noisePlane(4, at), at).every(Number.isFinite)).toBe(true);
  });
});

test.each([1, 1.6, 2.1, 4, 9.5])(
  'a blurred dot has the variance of the Gaussian: sigma %f',
  (sigma) => {
    const at = { width: 101, height: 1 };
    const dot = new Float32Array(101);
    dot[50] = 1;
    const spread = blurred(sigma)(dot, at);
    const sum = spread.reduce((all, value) => all + value, 0);
    const variance = spread.reduce((all, value, i) => all + value * (i - 50) ** 2, 0);
    expect(sum).toBeCloseTo(1, 5);
    expect(Math.sqrt(variance)).toBeCloseTo(sigma, 2);
    for (let i = 0; i < 101; i++) {
      const gauss =
        Math.exp(-((i - 50) ** 2) / (2 * sigma ** 2)) / (sigma * Math.sqrt(2 * Math.PI));
      expect(Math.abs((spread[i] as number) - gauss)).toBeLessThan(0.04 / sigma);
    }
  },
);

test('a blur needs a width', () => {
  expect(() => runToEnd(gaussianBlur([], size, 0))).toThrow(RangeError);
});

/** The slow obvious way: every pixel of a line weighs what is left after all steps between. */
function slowLine(line: Float32Array, spacePx: number, tone: number): Float64Array {
  let values = Float64Array.from(line);
  for (let i = 1; i <= 3; i++) {
    const sigma = (spacePx * Math.sqrt(3) * 2 ** (3 - i)) / Math.sqrt(4 ** 3 - 1);
    const way = (from: number, to: number): number => {
      let sum = 0;
      for (let j = Math.min(from, to); j < Math.max(from, to); j++) {
        const step = Math.abs((line[j + 1] as number) - (line[j] as number));
        sum += 1 + (spacePx / tone) * step;
      }
      return sum;
    };
    values = values.map((_, at) => {
      let sum = 0;
      let weights = 0;
      for (let j = 0; j < line.length; j++) {
        const weight = Math.exp((-Math.SQRT2 * way(at, j)) / sigma);
        sum += weight * (values[j] as number);
        weights += weight;
      }
      return sum / weights;
    });
  }
  return values;
}

test('edge-preserving smoothing is the weighted mean it claims to be', () => {
  const at = { width: 60, height: 1 };
  const line = noisePlane(11, at).map((value, i) => 0.3 * value + (i < 25 ? 0 : 0.6));
  const slow = slowLine(line, 5, 0.4);
  const fast = smoothed(line, at);
  for (let i = 0; i < 60; i++) expect(fast[i]).toBeCloseTo(slow[i] as number, 4);
  const upright = smoothed(line, { width: 1, height: 60 });
  for (let i = 0; i < 60; i++) expect(upright[i]).toBeCloseTo(slow[i] as number, 4);
});

test('an edge stays where noise goes', () => {
  const random = seeded(6);
  const { raster } = painted(80, 60, (x) => {
    const code = (x < 40 ? 90 : 170) + Math.round(20 * (random() - 0.5));
    return [code, code, code];
  });
  const { lightness } = runToEnd(simplify(raster, 4));
  const row = lightness.subarray(30 * 80, 31 * 80);
  const side = (from: number, to: number): number[] => [...row.subarray(from, to)];
  const spread = (values: number[]): number => Math.max(...values) - Math.min(...values);
  expect(spread(side(0, 34))).toBeLessThan(1);
  expect(spread(side(46, 80))).toBeLessThan(1);
  expect((row[50] as number) - (row[29] as number)).toBeGreaterThan(28);
  expect((row[43] as number) - (row[36] as number)).toBeGreaterThan(24);
});

test('simplifying leaves the raster alone, and lightness free of hue', () => {
  const random = seeded(8);
  const reds = Array.from({ length: 400 }, () => Math.floor(120 * random()) + 60);
  const { raster } = painted(20, 20, (x, y) => {
    const red = reds[y * 20 + x] as number;
    return [red, 80, 200 - red / 2];
  });
  const before = raster.red.slice();
  const lightness = runToEnd(simplify(raster, 4)).lightness;
  expect(raster.red).toEqual(before);
  // The same luminance without the hue.
  const grey = raster.red.map(
    (red, i) =>
      0.2126390058715103 * red +
      0.7151686787677559 * (raster.green[i] as number) +
      0.07219231536073371 * (raster.blue[i] as number),
  );
  const same = runToEnd(simplify({ ...raster, red: grey, green: grey, blue: grey }, 4)).lightness;
  expect(furthest(lightness, same)).toBeLessThan(0.01);
});
