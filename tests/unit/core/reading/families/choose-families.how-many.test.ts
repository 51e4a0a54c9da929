import { describe, expect, test } from 'vitest';
import {
  chooseFamilies,
  colourOfPlace,
  familyPlaces,
  placeFinder,
  placeOfColour,
} from '../../../../../app/core/reading/families/choose-families.ts';
import type { ColourBins } from '../../../../../app/core/reading/families/colour-bins.ts';

// Colours as a few places of the a* b* plane, so that how they spread is reckoned by hand; what a family more has to
// gain is as the file tells it (own).
type Place = readonly [a: number, b: number, weight: number];

const binsOf = (places: readonly Place[]): ColourBins => {
  const column = (n: 0 | 1 | 2): Float64Array => Float64Array.from(places, (place) => place[n]);
  const total = places.reduce((sum, [, , weight]) => sum + weight, 0);
  return {
    ...{ count: places.length, a: column(0), b: column(1), weight: column(2), total },
    share: column(2).map((weight) => weight / total),
    shade: new Float64Array(places.length).fill(1),
    shadow: [0, 0],
  };
};
const pair = (apart: number): Place[] => [
  [20, 10 - apart / 2, 1],
  [20, 10 + apart / 2, 1],
];

describe('a family more', () => {
  test('is none where no colour strays from the one by more than 5', () => {
    expect(chooseFamilies(binsOf(pair(2 * 4.9)))).toHaveLength(1);
    expect(chooseFamilies(binsOf(pair(2 * 5.1)))).toHaveLength(2);
  });

  test('lies at least 7 from the others, even where she wishes for it', () => {
    expect(chooseFamilies(binsOf(pair(6.8)), 2)).toHaveLength(1);
    expect(chooseFamilies(binsOf(pair(7.2)), 2)).toHaveLength(2);
  });

  test('takes away 28 % of what is left of the spread', () => {
    // All stray by 8 from the middles of two families far apart: of one half to either side, of the other all round.
    // Parting the first takes away its share of the spread.
    const spreading = (share: number): Place[] => [
      [-32, -8, share / 2],
      [-32, 8, share / 2],
      ...Array.from({ length: 12 }, (_, n): Place => {
        const angle = (n / 12) * 2 * Math.PI;
        return [32 + 8 * Math.cos(angle), 8 * Math.sin(angle), (1 - share) / 12];
      }),
    ];
    expect(chooseFamilies(binsOf(spreading(0.26)), undefined, 3)).toHaveLength(2);
    const parted = chooseFamilies(binsOf(spreading(0.3)), undefined, 3);
    expect(parted.map(([a, b]) => `${Math.round(a)} ${Math.round(b)}`).sort()).toEqual([
      '-32 -8',
      '-32 8',
      '32 0',
    ]);
  });

  test('is none of a picture without colours', () => {
    expect(chooseFamilies(binsOf([]))).toEqual([[0, 0]]);
  });
});

describe('places of the plane of colours', () => {
  test('are half a unit wide, from -128 to 128 both ways; what lies beyond is held at the border', () => {
    for (const [a, b] of [
      [0.2, -0.2],
      [-127.8, 127.7],
      [55.4, -80.1],
    ] as const) {
      const [u, v] = colourOfPlace(placeOfColour(a, b));
      expect(Math.abs(u - a)).toBeLessThanOrEqual(0.25);
      expect(Math.abs(v - b)).toBeLessThanOrEqual(0.25);
    }
    expect(colourOfPlace(placeOfColour(500, -500))).toEqual([127.75, -127.75]);
    expect(placeOfColour(0, 0) - placeOfColour(-0.5, 0)).toBe(1);
    expect(placeOfColour(0, 0) - placeOfColour(0, -0.5)).toBe(512);
  });

  test('go to the nearest centre; one centre has them all', () => {
    const places = familyPlaces([
      [-20, 0],
      [30, 5],
      [0, 60],
    ]);
    const familyOf = (a: number, b: number) => places[placeOfColour(a, b)];
    expect([familyOf(-25, 4), familyOf(40, -10), familyOf(5, 90), familyOf(4, 2)]).toEqual([
      0, 1, 2, 0,
    ]);
    expect(familyPlaces([[9, 9]]).every((family) => family === 0)).toBe(true);
  });

  test('in the dark colours count as at L* 50, and from L* 10 down the shadows’ own stands in', () => {
    const find = placeFinder([12, -8]);
    const colourAt = (lightness: number, a: number, b: number) =>
      colourOfPlace(find(lightness, a, b));
    // Light and shade scale L* + 16: 50 is 66, 17 is half of it.
    const at = [
      [colourAt(50, 10, 20), [10, 20]],
      [colourAt(17, 10, 20), [20, 40]],
      [colourAt(9, 40, 40), [12, -8]],
      // Halfway from 10 to 16 half of either; 13 is 29 of 66.
      [colourAt(13, 10, 20), [5 * (66 / 29) + 6, 10 * (66 / 29) - 4]],
    ] as const;
    for (const [[a, b], [u, v]] of at) {
      expect(Math.abs(a - u)).toBeLessThanOrEqual(0.5);
      expect(Math.abs(b - v)).toBeLessThanOrEqual(0.5);
    }
  });
});
