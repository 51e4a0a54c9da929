import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { smallestShapeMm } from '../../../../app/core/limits.ts';
import { runToEnd } from '../../../../app/core/numeric/run-to-end.ts';
import { labelPixels, labelRuns } from '../../../../app/core/raster/label-shapes.ts';
import {
  coveredBy,
  leastSizeMm,
  type MassSizes,
  type MassWash,
  massSizes,
  massWashes,
  mostSizeMm,
  smallestSizes,
  withSize,
} from '../../../../app/core/reading/masses.ts';
import { countMasses, washMasses } from '../../../../app/core/reading/shapes/wash-masses.ts';
import type { Slot } from '../../../../app/core/reading/slot.ts';
import { massesInWords, shapesInWords } from '../../../../app/core/words/reading/masses.ts';
import { photographs, readPhoto } from '../../../support/reading/rasters.ts';

const washes: readonly MassWash[] = ['firstWash', 'second', 'darks'];

const slot = (band: number, family: number, lightness: number, reserve = false): Slot => ({
  passage: 'sheet',
  band,
  family,
  share: 0.25,
  lab: [lightness, 0, 0],
  target: [lightness, 0, 0],
  reserve,
  shapes: 1,
  smallShapes: 0,
  largestMm2: 1,
});

/** White, two families in the light band, one mid, one dark. */
const slots = [
  slot(1, 1, 95, true),
  slot(2, 1, 75),
  slot(2, 2, 73),
  slot(3, 1, 50),
  slot(4, 1, 25),
];

// Limits and figures are (own): the docstrings of what is tested say why.
test('what each wash covers: all but the whites, from the second painted band on, the darkest', () => {
  expect(washes.map((wash) => coveredBy(wash, slots).map(Number).join(''))).toEqual([
    '01111',
    '00011',
    '00001',
  ]);
  expect(coveredBy('darks', slots.slice(0, 4))).toEqual([false, false, false, false]);
  expect(coveredBy('firstWash', [slot(1, 1, 95, true)])).toEqual([false]);
});

/** 100 x 80 px, 1 px a mm: rows of slots put down as rectangles over white. */
function sheetOf(rectangles: readonly (readonly [number, number, number, number, number])[]) {
  const map = new Uint8Array(100 * 80);
  for (const [left, top, width, height, value] of rectangles) {
    for (let y = top; y < top + height; y++) {
      map.fill(value, y * 100 + left, y * 100 + left + width);
    }
  }
  return map;
}
const size = { width: 100, height: 80 };

test('one light shape with darker ones on it is one mass of the first wash', () => {
  const map = sheetOf([
    [10, 10, 60, 50, 1],
    [20, 20, 20, 20, 3],
    [50, 20, 6, 6, 4],
    [22, 22, 3, 3, 4],
    [80, 60, 6, 6, 2], // 6 mm: too small for the first wash, and nothing but white about it
  ]);
  expect(runToEnd(countMasses(map, slots, size, 1, massSizes))).toEqual({
    firstWash: 1,
    second: 2, // the 20 mm shape and the 6 mm one; the 3 mm one lies inside the first
    darks: 2,
  });
});

test('families of one wash are masses of their own; too small ones go to the nearest in value', () => {
  const map = sheetOf([
    [0, 0, 50, 80, 1],
    [50, 0, 50, 80, 2],
    [20, 20, 8, 8, 2], // 8 mm of the other family
  ]);
  expect(runToEnd(countMasses(map, slots, size, 1, massSizes)).firstWash).toBe(2);
  const fine = { ...massSizes, firstWash: 5 };
  expect(runToEnd(countMasses(map, slots, size, 1, fine)).firstWash).toBe(3);
});

test('whites stay down to a sparkle of 1 mm', () => {
  const map = sheetOf([
    [0, 0, 100, 80, 1],
    [20, 20, 2, 2, 0],
  ]);
  const { map: first, count } = runToEnd(washMasses(map, slots, size, 1, 'firstWash', massSizes));
  expect(count).toBe(1);
  expect(first[21 * 100 + 21]).not.toBe(first[0]);
});

describe.each(photographs)('%s', (path) => {
  test('none below the smallest paintable shape but whites and accents; the same every time', async () => {
    const { reading, slotMap } = await readPhoto(path, 600);
    const { width, height } = reading.raster;
    const pxPerMm = Math.sqrt((width * height) / (381 * 279));
    for (const wash of washes) {
      const find = () =>
        runToEnd(washMasses(slotMap, reading.slots, reading.raster, pxPerMm, wash, massSizes));
      const { map, isPainted, count } = find();
      expect(map).toEqual(find().map);
      expect(count).toBe(reading.masses?.[wash]);
      expect(count).toBeGreaterThan(0);
      const shapes = runToEnd(labelRuns(map, reading.raster));
      const labels = labelPixels(shapes);
      const { kinds, areasPx } = shapes;
      expect(areasPx.reduce((sum, area) => sum + area, 0)).toBe(width * height);
      const whites = new Set<number>();
      for (let i = 0; i < slotMap.length; i++) {
        if (reading.slots[slotMap[i] as number]?.reserve) whites.add(labels[i] as number);
      }
      for (const [shape, area] of areasPx.entries()) {
        const isFine = whites.has(shape) || (wash === 'darks' && isPainted[kinds[shape] as number]);
        const leastMm = isFine ? smallestShapeMm.details : massSizes[wash];
        expect(area).toBeGreaterThanOrEqual((leastMm * pxPerMm) ** 2);
      }
    }
    const { firstWash = 0, second = 0 } = reading.masses ?? {};
    // Big before small: the first wash has fewer shapes than the one over it.
    expect(firstWash).toBeLessThan(second);
  });
});

test.each([
  [8, 16, 5, 'Shapes to paint: 8 in the first wash, 16 in the second, 5 darks.'],
  [
    12,
    31,
    9,
    'Shapes to paint: 12 in the first wash, 31 in the second, 9 darks. One puddle covers many of them at once; a larger smallest shape leaves fewer.',
  ],
  [1, 2, 1, 'Shapes to paint: 1 in the first wash, 2 in the second, 1 dark.'],
  [3, 4, 0, 'Shapes to paint: 3 in the first wash, 4 in the second.'],
  [1, 0, 0, 'Shapes to paint: 1 in the first wash.'],
  [0, 0, 0, 'There is no shape to paint: the sheet stays white.'],
])('%i, %i and %i', (firstWash, second, darks, sentence) =>
  expect(massesInWords({ firstWash, second, darks })).toBe(sentence),
);

test('the shapes of one wash', () => {
  expect([0, 1, 12].map(shapesInWords)).toEqual([
    'No shapes in this wash',
    '1 shape, outlined',
    '12 shapes, outlined',
  ]);
});

test('the usual sizes where she wished for none', () => {
  expect(smallestSizes()).toEqual({ firstWash: 10, second: 5, darks: 2 });
  expect(smallestSizes(massSizes)).toEqual(massSizes);
});

test.each([
  [
    { firstWash: 60, second: 5, darks: 0 },
    { firstWash: 40, second: 5, darks: 1 },
  ],
  [
    { firstWash: 4, second: 8, darks: 6 },
    { firstWash: 4, second: 4, darks: 4 },
  ],
  [
    { firstWash: Number.NaN, second: 5, darks: 2 },
    { firstWash: 10, second: 5, darks: 2 },
  ],
])('%j is held to %j', (wished, sizes) => expect(smallestSizes(wished)).toEqual(sizes));

test('one size set, the others give way', () => {
  expect(withSize(massSizes, 'second', 12)).toEqual({ firstWash: 12, second: 12, darks: 2 });
  expect(withSize(massSizes, 'firstWash', 3)).toEqual({ firstWash: 3, second: 3, darks: 2 });
  expect(withSize(massSizes, 'darks', 8)).toEqual({ firstWash: 10, second: 8, darks: 8 });
  expect(withSize(massSizes, 'darks', 0)).toEqual({ firstWash: 10, second: 5, darks: 1 });
});

test('whatever is set: within the bounds, broad to fine, the one set as set, and settled', () => {
  const mm = fc.double({ min: leastSizeMm, max: mostSizeMm, noNaN: true });
  const sizes = fc.record({ firstWash: mm, second: mm, darks: mm }).map(smallestSizes);
  fc.assert(
    fc.property(sizes, fc.constantFrom(...massWashes), mm, (before: MassSizes, wash, set) => {
      const after = withSize(before, wash, set);
      expect(after[wash]).toBe(set);
      expect(after.firstWash).toBeGreaterThanOrEqual(after.second);
      expect(after.second).toBeGreaterThanOrEqual(after.darks);
      expect(smallestSizes(after)).toEqual(after);
      expect(withSize(after, wash, set)).toEqual(after);
    }),
  );
});
