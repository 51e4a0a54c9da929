import { describe, expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import {
  familyName,
  listFamilies,
} from '../../../../../app/core/reading/families/list-families.ts';
import { CellTones, packCell } from '../../../../../app/core/reading/shapes/cells.ts';

const colourAt = (degrees: number, chroma: number, lightness: number): Lab => [
  lightness,
  chroma * Math.cos((degrees * Math.PI) / 180),
  chroma * Math.sin((degrees * Math.PI) / 180),
];

// Limits and figures are (own): the docstrings of what is tested say why.
describe('where one colour word gives way to the next, degrees of hue', () => {
  // Strong colours at mid lightness, so that no earth word takes them.
  test.each([
    [22, 'cool red', 'warm red'],
    [42, 'warm red', 'orange'],
    [68, 'orange', 'orange-yellow'],
    [82, 'orange-yellow', 'yellow'],
    [98, 'yellow', 'yellow-green'],
    [122, 'yellow-green', 'green'],
    [160, 'green', 'blue-green'],
    [200, 'blue-green', 'greenish blue'],
    [240, 'greenish blue', 'blue'],
    [296, 'blue', 'violet-blue'],
    [312, 'violet-blue', 'violet'],
    [325, 'violet', 'red-violet'],
    [342, 'red-violet', 'cool red'],
  ])('%i: %s, then %s', (limit, before, after) => {
    expect(familyName(colourAt(limit - 0.01, 50, 60))).toBe(before);
    expect(familyName(colourAt(limit + 0.01, 50, 60))).toBe(after);
  });
});

describe('how strong a colour is', () => {
  test.each([
    [2.9, 60, 'grey'],
    [2.9, 92.1, 'white'],
    [2.9, 92, 'grey'],
    [2.9, 11.9, 'black'],
    [2.9, 12, 'grey'],
    [3.1, 60, 'cool grey'],
    [8.9, 60, 'cool grey'],
    [9.1, 60, 'dull blue'],
    [23.9, 75, 'dull blue'],
    [23.9, 75.1, 'pale blue'],
    [24.1, 90, 'blue'],
    [54.9, 60, 'blue'],
    [55.1, 60, 'strong blue'],
  ])('a blue of chroma %f at %f L* is %s', (chroma, lightness, name) => {
    expect(familyName(colourAt(270, chroma, lightness))).toBe(name);
  });

  test.each([
    [94.9, 'warm grey'],
    [95.1, 'greenish grey'],
    [174.9, 'greenish grey'],
    [175.1, 'cool grey'],
    [329.9, 'cool grey'],
    [330.1, 'warm grey'],
  ])('a grey towards %f degrees is a %s', (degrees, name) => {
    expect(familyName(colourAt(degrees, 6, 60))).toBe(name);
  });
});

describe('earths: warm hues, dark or dull', () => {
  test.each([
    [29.9, 30, 40, 'warm red'],
    [30.1, 30, 40, 'brown'],
    [97.9, 30, 40, 'brown'],
    [98.1, 30, 40, 'yellow-green'],
    [60, 44.9, 40, 'brown'],
    [60, 45, 40, 'orange'],
    [60, 15.9, 40, 'dull brown'],
    [60, 16.1, 40, 'brown'],
    [60, 30, 47.9, 'brown'],
    [60, 30, 48, 'red earth'],
    [61.9, 30, 60, 'red earth'],
    [62.1, 30, 60, 'ochre'],
    [60, 30, 77.9, 'red earth'],
    [60, 30, 78, 'orange'],
    [60, 19.9, 60, 'dull orange'],
    [60, 20.1, 60, 'red earth'],
  ])('hue %f, chroma %f, %f L*: %s', (degrees, chroma, lightness, name) => {
    expect(familyName(colourAt(degrees, chroma, lightness))).toBe(name);
  });
});

test('families with pixels left, the largest first, equal ones in the map’s order, with their shares', () => {
  const families = [1, 2, 3, 4];
  const cells = Uint8Array.from(families, (family) => packCell(2, family));
  const plane = Float32Array.from(families, (family) => 10 * family);
  const tones = new CellTones(cells, { lightness: plane, a: plane, b: plane });
  const { families: listed, was } = listFamilies([0, 30, 0, 60, 30], tones);
  expect(was).toEqual([3, 1, 4]);
  expect(listed.map(({ id, lab, share }) => [id, lab[0], share])).toEqual([
    [1, 30, 0.5],
    [2, 10, 0.25],
    [3, 40, 0.25],
  ]);
  expect(() => listFamilies([5], tones)).toThrow('came out of nothing');
});
