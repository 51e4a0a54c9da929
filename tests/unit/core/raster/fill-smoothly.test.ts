import { describe, expect, test } from 'vitest';
import { runToEnd } from '../../../../app/core/numeric/run-to-end.ts';
import { fillSmoothly } from '../../../../app/core/raster/fill-smoothly.ts';
import { seeded } from '../../../support/reading/seeded.ts';

type Place = (x: number, y: number) => number;

/** The plane with its unknown places filled; they hold rubbish before. */
function filled(
  width: number,
  height: number,
  isKnown: (x: number, y: number) => boolean,
  value: Place,
) {
  const each = <T>(of: (x: number, y: number) => T): T[] =>
    Array.from({ length: width * height }, (_, i) => of(i % width, Math.floor(i / width)));
  const known = Uint8Array.from(each((x, y) => (isKnown(x, y) ? 1 : 0)));
  const plane = Float32Array.from(each((x, y) => (isKnown(x, y) ? value(x, y) : 77)));
  runToEnd(fillSmoothly({ width, height, known, planes: [plane] }));
  return plane;
}

/** Every unknown place the mean of its neighbours, at the border itself for the missing one: by many plain sweeps. */
function exact(
  width: number,
  height: number,
  isKnown: (x: number, y: number) => boolean,
  value: Place,
) {
  const plane = new Float64Array(width * height).fill(0.5);
  for (let sweep = 0; sweep < 4000; sweep++) {
    for (let y = 0, i = 0; y < height; y++) {
      for (let x = 0; x < width; x++, i++) {
        if (isKnown(x, y)) {
          plane[i] = value(x, y);
          continue;
        }
        const beside = [
          x > 0 ? i - 1 : i,
          x < width - 1 ? i + 1 : i,
          y > 0 ? i - width : i,
          y < height - 1 ? i + width : i,
        ];
        plane[i] = beside.reduce((sum, at) => sum + (plane[at] as number), 0) / 4;
      }
    }
  }
  return plane;
}

const worst = (one: ArrayLike<number>, other: ArrayLike<number>): number =>
  Array.from(one, (value, i) => Math.abs(value - (other[i] as number))).reduce(
    (a, b) => Math.max(a, b),
    0,
  );

describe('what is known stays, to the last bit', () => {
  test('on any mask', () => {
    const random = seeded(4);
    const mask = Array.from({ length: 300 }, () => random() < 0.4);
    const values = Float32Array.from(mask, () => random());
    const plane = filled(
      20,
      15,
      (x, y) => mask[20 * y + x] === true,
      (x, y) => values[20 * y + x] as number,
    );
    mask.forEach((known, i) => {
      if (known) expect(plane[i]).toBe(values[i]);
      else expect(plane[i]).toBeLessThanOrEqual(1.0001);
    });
  });
});

describe.each([
  ['a hole in the middle', 32, 24, (x: number, y: number) => Math.hypot(x - 16, y - 12) > 7, 0.01],
  ['a corner', 21, 17, (x: number, y: number) => x > 8 || y > 6, 0.02],
  ['all but one column', 19, 13, (x: number) => x === 0, 0.03],
  ['all but one place', 9, 9, (x: number, y: number) => x === 4 && y === 4, 0.001],
  ['a strip of one row', 33, 1, (x: number) => x === 0 || x === 32, 0.07],
] as const)('%s', (_, width, height, isKnown, most) => {
  test('in flat surroundings: as flat', () => {
    const plane = filled(width, height, isKnown, () => 0.625);
    expect(plane.every((value) => Math.abs(value - 0.625) < 1e-5)).toBe(true);
  });

  // As near as measured, and a little more: one sweep at full size leaves the most where hardly anything is known.
  test('every place the mean of its neighbours, nearly', () => {
    const slope: Place = (x, y) => 0.2 + (0.6 * x) / width + (0.2 * y * y) / (height * height);
    const plane = filled(width, height, isKnown, slope);
    expect(worst(plane, exact(width, height, isKnown, slope))).toBeLessThan(most);
  });
});

test('several planes are filled each by itself', () => {
  const known = Uint8Array.of(1, 0, 0, 1);
  const planes = [Float32Array.of(0, 9, 9, 0), Float32Array.of(1, 9, 9, 1)];
  runToEnd(fillSmoothly({ width: 4, height: 1, known, planes }));
  expect(planes.map((plane) => [...plane].map((value) => Math.round(1e4 * value) / 1e4))).toEqual([
    [0, 0, 0, 0],
    [1, 1, 1, 1],
  ]);
});

test('over many cells control is handed back after each sweep: one a plane at full size', () => {
  const pauses = (width: number, height: number, planeCount: number): number => {
    const known = new Uint8Array(width * height).fill(1);
    for (let y = 100; y < 130; y++) known.fill(0, y * width + 100, y * width + 130);
    const planes = Array.from({ length: planeCount }, () => new Float32Array(width * height));
    return [...fillSmoothly({ width, height, known, planes })].length;
  };
  const few = pauses(400, 250, 1);
  expect(pauses(400, 250, 3)).toBe(few);
  expect(pauses(400, 251, 1)).toBe(few + 1); // over 100,000 cells
  expect(pauses(400, 251, 3)).toBe(few + 3);
});
