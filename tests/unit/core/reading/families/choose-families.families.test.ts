import { describe, expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import type { LabPlanes } from '../../../../../app/core/raster/linear-raster.ts';
import {
  chooseFamilies,
  familyMap,
  familyPlaces,
} from '../../../../../app/core/reading/families/choose-families.ts';
import {
  binColours,
  colourTrust,
  shadeFree,
} from '../../../../../app/core/reading/families/colour-bins.ts';
import { hueCentres } from '../../../../../app/core/reading/families/hue-centres.ts';
import { familyName, familyNames } from '../../../../../app/core/words/colour-names.ts';
import { casePicture, readFor } from '../../../../support/reading/rasters.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

const planesOf = (colours: readonly Lab[]): LabPlanes => ({
  lightness: Float32Array.from(colours, ([l]) => l),
  a: Float32Array.from(colours, ([, a]) => a),
  b: Float32Array.from(colours, ([, , b]) => b),
});

/** `count` colours around one, strayed by noise of that size. */
const around = (count: number, [l, a, b]: Lab, noise = 3, seed = 1): Lab[] => {
  const random = seeded(seed);
  const stray = (): number => noise * (random() + random() - 1);
  return Array.from({ length: count }, (): Lab => [l + stray(), a + stray(), b + stray()]);
};

const familiesIn = (colours: readonly Lab[], wish?: number): number[] => {
  const planes = planesOf(colours);
  const cells = binColours(planes);
  const places = familyPlaces(chooseFamilies(cells, wish));
  return [...familyMap(planes, [{ places, cells, where: null }])];
};

describe('grouping', () => {
  test('three plain hues are three families, whatever their shares', () => {
    const colours = [
      ...around(900, [50, 40, 30]),
      ...around(300, [60, -30, 35]),
      ...around(100, [40, 10, -40]),
    ];
    const found = familiesIn(colours);
    const groups = [found.slice(0, 900), found.slice(900, 1200), found.slice(1200)];
    expect(groups.map((group) => new Set(group).size)).toEqual([1, 1, 1]);
    expect(new Set(found).size).toBe(3);
  });

  test('noise of a grey picture is no family', () => {
    expect(new Set(familiesIn(around(2000, [50, 0, 0], 5))).size).toBe(1);
    expect(new Set(familiesIn(around(2000, [50, 0, 0], 5), 6)).size).toBe(1);
  });

  test('light and shade of one colour are one family', () => {
    const lit: Lab[] = Array.from({ length: 500 }, (_, i) => {
      const lightness = 18 + i / 7;
      const scale = (lightness + 16) / 66;
      return [lightness, 20 * scale, 35 * scale];
    });
    expect(new Set(familiesIn(lit)).size).toBe(1);
  });

  test('noise in the blacks goes with the shadows around, not to hues of its own', () => {
    const random = seeded(4);
    const blacks: Lab[] = Array.from({ length: 300 }, () => [
      4 * random(),
      16 * (random() - 0.5),
      16 * (random() - 0.5),
    ]);
    const colours = [...around(500, [25, 6, 12]), ...around(500, [70, -10, -30]), ...blacks];
    const found = familiesIn(colours);
    expect(new Set(found).size).toBe(2);
    expect(new Set(found.slice(1000))).toEqual(new Set([found[0]]));
  });

  test('a wish is met as far as the picture has hues', () => {
    const colours = [...around(500, [50, 40, 30]), ...around(500, [60, -30, 35])];
    expect(new Set(familiesIn(colours, 1)).size).toBe(1);
    expect(new Set(familiesIn(colours, 2)).size).toBe(2);
  });

  test('the cost never rises with another group, and the same picture gives the same', () => {
    const random = seeded(9);
    const colours = Array.from(
      { length: 800 },
      (): Lab => [50, 80 * (random() - 0.5), 80 * (random() - 0.5)],
    );
    const found = hueCentres(binColours(planesOf(colours)), 6);
    for (let k = 1; k < found.length; k++) {
      expect(found[k]?.cost).toBeLessThanOrEqual((found[k - 1] as { cost: number }).cost + 1e-9);
    }
    expect(hueCentres(binColours(planesOf(colours)), 6)).toEqual(found);
  });

  test('no colour at all is one family', () => {
    expect(familiesIn([[0, 0, 0]])).toEqual([0]);
    expect(familiesIn([[100, 0, 0]])).toEqual([0]);
  });
});

test('trust grows from none in the blacks to all', () => {
  expect([5, 10, 13, 16, 80].map(colourTrust)).toEqual([0, 0, 0.5, 1, 1]);
  expect(shadeFree(50)).toBe(1);
});

// Names of hues: common practice, no source; where one ends and the next begins is (own).
describe('names', () => {
  test.each([
    [[50, 0, 0], 'grey'],
    [[97, 1, 1], 'white'],
    [[5, 0, 1], 'black'],
    [[60, 3, 5], 'warm grey'],
    [[60, -1, -6], 'cool grey'],
    [[55, -5, 14], 'dull yellow-green'],
    [[50, 10, -45], 'blue'],
    [[53, 80, 67], 'strong warm red'],
    [[85, 0, 80], 'strong yellow'],
    [[35, 12, 22], 'brown'],
    [[60, 8, 32], 'ochre'],
    [[50, -40, 20], 'green'],
  ] as [Lab, string][])('%j is %s', (lab, name) => expect(familyName(lab)).toBe(name));

  test('two of a kind are told apart', () => {
    const names = familyNames([
      [50, -40, 20],
      [52, -25, 12],
      [50, 0, 0],
    ]);
    expect(names).toEqual(['stronger green', 'weaker green', 'grey']);
  });

  test('by how light they are where that tells more', () => {
    const names = familyNames([
      [40, -5, 24],
      [10, -4, 17],
    ]);
    expect(names).toEqual(['lighter olive', 'darker olive']);
  });

  test('six of a kind too', () => {
    const names = familyNames(Array.from({ length: 6 }, (_, i): Lab => [50, -30 - i, 15]));
    expect(new Set(names).size).toBe(6);
  });
});

test('hues on both sides of 0 degrees are red on average, never cyan', async () => {
  const { reading } = await readFor(await casePicture('hue-astride-zero'), { families: 1 });
  const [family] = reading.families;
  const [, a, b] = family?.lab ?? [0, 0, 0];
  expect(Math.abs((Math.atan2(b, a) * 180) / Math.PI)).toBeLessThan(5);
  expect(family?.name).toContain('red');
});
