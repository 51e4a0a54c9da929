import { describe, expect, test } from 'vitest';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import { listFamilies } from '../../../../app/core/reading/families/list-families.ts';
import { CellTones, packCell } from '../../../../app/core/reading/shapes/cells.ts';
import { familyName } from '../../../../app/core/words/colour-names.ts';

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
    [2.9, 88.1, 'white'],
    [2.9, 88, 'grey'],
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
    [117.9, 'warm grey'],
    [118.1, 'greenish grey'],
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
    [89.9, 30, 40, 'brown'],
    [90.1, 30, 40, 'olive'],
    [117.9, 30, 40, 'olive'],
    [118.1, 30, 40, 'yellow-green'],
    [100, 15.9, 40, 'dull olive'],
    [100, 30, 54.9, 'olive'],
    [100, 30, 55, 'yellow-green'],
    [97.9, 30, 55, 'ochre'],
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

describe('colours named elsewhere', () => {
  // Central colours of named blocks, sRGB turned to Lab: Kelly & Judd, Color: Universal Language and Dictionary of
  // Names, NBS SP 440, 1976. What the words here call them is (own).
  test.each([
    ['bluish white', [92, 1, -2], /^white$/],
    ['greenish white', [93, -6, 1], /^greenish white$/],
    ['olive grey', [36, -1, 6], /^warm grey$/],
    ['light greenish grey', [76, -6, 3], /^greenish grey$/],
    ['greenish grey', [56, -5, 1], /^greenish grey$/],
    ['bluish grey', [56, -1, -3], /^cool grey$/],
    ['light olive', [52, -7, 39], /^olive$/],
    ['moderate olive', [39, -5, 36], /^olive$/],
    ['dark olive', [25, -4, 18], /^olive$/],
    ['greyish olive', [37, -3, 13], /^dull olive$/],
    ['dark greyish olive', [22, -2, 9], /^dull olive$/],
    ['moderate olive green', [37, -17, 30], /green$/],
    ['dark olive brown', [21, 2, 12], /^dull brown$/],
    ['moderate olive brown', [37, 4, 34], /^brown$/],
    ['dark yellowish brown', [24, 6, 17], /^brown$/],
    ['dark greyish yellow', [60, 0, 27], /^ochre$/],
  ] as [string, Lab, RegExp][])('%s', (_, lab, ours) => expect(familyName(lab)).toMatch(ours));

  test('whatever is nearly white and yellow is a cream, whatever is nearly grey and yellow warm, never green (own)', () => {
    for (let lightness = 20; lightness <= 97; lightness += 7)
      for (let chroma = 3.5; chroma < 9; chroma++)
        for (let angle = 65; angle < 115; angle += 5) {
          const lab = colourAt(angle, chroma, lightness);
          expect(familyName(lab), String(lab)).toBe(lightness > 88 ? 'cream' : 'warm grey');
        }
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
