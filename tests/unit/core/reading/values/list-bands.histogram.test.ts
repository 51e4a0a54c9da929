import { describe, expect, test } from 'vitest';
import { flatnessWarnings } from '../../../../../app/core/reading/picture-warnings.ts';
import type { Border } from '../../../../../app/core/reading/reading.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import { chooseRange, tonesPresent } from '../../../../../app/core/reading/sort-pixels.ts';
import { toneRange } from '../../../../../app/core/reading/tone-range.ts';
import {
  optimalBands,
  proposeBands,
} from '../../../../../app/core/reading/values/choose-limits.ts';
import {
  binOf,
  percentile,
  pictureKey,
} from '../../../../../app/core/reading/values/list-bands.ts';
import { bandsWhyInWords, warningInWords } from '../../../../../app/core/words/reading/warnings.ts';

/** Equal counts at every bin between two lightnesses, with more at single places. */
const spread = (from: number, to: number, more: Record<number, number> = {}): Uint32Array => {
  const counts = new Uint32Array(256);
  for (let bin = binOf(from); bin <= binOf(to); bin++) counts[bin] = 10;
  for (const [lightness, count] of Object.entries(more)) counts[binOf(Number(lightness))] = count;
  return counts;
};

const proposed = (histogram: Uint32Array) =>
  proposeBands(optimalBands(histogram, 7), histogram, toneRange('opened', 5, 95, 12, 95.5));

describe('percentiles', () => {
  test('count from the dark end', () => {
    const histogram = spread(0, 0, { 0: 1, 20: 98, 100: 1 });
    expect(percentile(histogram, 0.01)).toBe(0);
    expect(percentile(histogram, 0.5)).toBeCloseTo(20, 5);
    expect(percentile(histogram, 0.99)).toBeCloseTo(20, 5);
    expect(percentile(histogram, 1)).toBe(100);
  });
  test('nothing counted is 0', () => expect(percentile(new Uint32Array(256), 0.5)).toBe(0));
});

describe('key and range', () => {
  test.each([
    ['high', spread(55, 100)],
    ['low', spread(2, 60)],
    ['full', spread(2, 98)],
  ] as const)('%s', (key, histogram) => expect(pictureKey(histogram)).toBe(key));

  test('a picture stays as photographed, however flat, unless she wants it opened up', () => {
    expect(chooseRange(spread(2, 98), 12, 95).mode).toBe('photographed');
    expect(chooseRange(spread(55, 100), 12, 95).mode).toBe('photographed');
    expect(chooseRange(spread(55, 100), 12, 95, 'opened').mode).toBe('opened');
    expect(chooseRange(spread(50, 51), 12, 95).mode).toBe('photographed');
  });

  test('lo and hi are the 1st and 99th percentile, dark and paper what was given', () => {
    const histogram = spread(0, 100);
    const { lo, hi, dark, paper } = chooseRange(histogram, 14, 96);
    expect([lo, hi]).toEqual([percentile(histogram, 0.01), percentile(histogram, 0.99)]);
    expect([dark, paper]).toEqual([14, 96]);
  });
});

describe('number of bands', () => {
  test('four as a rule', () => expect(proposed(spread(5, 90)).bands).toBe(4));
  test('three where three groups hold everything', () => {
    const counts = spread(0, 0, {
      0: 0,
      10: 900,
      12: 900,
      50: 900,
      52: 900,
      90: 900,
      93: 900,
      94: 9,
    });
    expect(proposed(counts)).toEqual({ bands: 3, why: { why: 'three-enough' } });
  });
  test('five where the tones lie far apart', () => {
    const counts = spread(0, 0, { 0: 900, 25: 900, 26: 9, 50: 900, 75: 900, 100: 900 });
    expect(proposed(counts).bands).toBe(5);
  });
  test('no more than there are tones', () => {
    expect(proposed(spread(0, 0, { 0: 5, 100: 5 })).bands).toBe(2);
    expect(bandsWhyInWords(proposed(spread(50, 50)).why)).toBe(
      'The picture holds no more than one tone.',
    );
  });
});

describe('tones a picture shows', () => {
  test('noise of a code up or down is one tone', () => {
    expect(tonesPresent(spread(0, 0, { 0: 0, 50: 90, 50.4: 900, 50.8: 90 }))).toBe(1);
  });
  test('a handful of pixels is none', () => {
    expect(tonesPresent(spread(0, 0, { 0: 5000, 40: 3, 100: 5000 }))).toBe(2);
  });
  test('a ramp has plenty', () => expect(tonesPresent(spread(0, 100))).toBeGreaterThan(40));
});

const slot = (family: number, lightness: number): Slot => ({
  passage: 'sheet',
  band: 1,
  family,
  share: 0.5,
  lab: [lightness, 0, 0],
  target: [lightness, 0, 0],
  reserve: false,
  shapes: 1,
  smallShapes: 0,
  largestMm2: 100,
});
const border = (lost: number): Border => ({
  a: 0,
  b: 1,
  lengthMm: 300,
  contrast: 2,
  soft: 0,
  lost,
});

// That a picture all in the middle, without darks, comes out flat: T. Harrison, a teacher's blog (no year), and common
// practice; the limits (a span of 40, value 3, 80 %, 4 L*, 2 %) are (own).
describe('what a painter is warned of', () => {
  const facts = {
    histogram: spread(2, 98),
    clipped: { light: 0, dark: 0 },
    slots: [slot(1, 80), slot(2, 15)],
    borders: [border(0.1)],
  };
  const codes = (more: Partial<typeof facts>): string[] =>
    flatnessWarnings({ ...facts, ...more }).map(({ code }) => code);

  test('nothing, where nothing is amiss', () => expect(codes({})).toEqual([]));
  test('a span under 40', () => expect(codes({ histogram: spread(20, 58) })).toContain('flat'));
  test('not a span over 40', () =>
    expect(codes({ histogram: spread(20, 70) })).not.toContain('flat'));
  test('no dark', () => expect(codes({ slots: [slot(1, 80), slot(2, 31)] })).toEqual(['no-darks']));
  test('most in one third', () => {
    expect(codes({ histogram: spread(2, 98, { 50: 20_000 }) })).toContain('one-third');
  });
  test('lost on the camera, from 2 % on', () => {
    expect(codes({ clipped: { light: 0.03, dark: 0.05 } })).toEqual([
      'clipped-light',
      'clipped-dark',
    ]);
    expect(codes({ clipped: { light: 0.019, dark: 0.019 } })).toEqual([]);
  });
  test('neighbours of other hue that merge', () => {
    expect(codes({ borders: [border(0.8)] })).toEqual(['merge']);
    expect(codes({ borders: [border(0.8)], slots: [slot(1, 80), slot(1, 15)] })).toEqual([]);
  });
  test('key, said instead of missing darks', () => {
    expect(codes({ histogram: spread(45, 98), slots: [slot(1, 80)] })).toEqual(['high-key']);
    expect(codes({ histogram: spread(2, 60) })).toEqual(['low-key']);
  });
  test('a sentence each, or what to do in one more', () => {
    const all = flatnessWarnings({
      histogram: spread(30, 60),
      clipped: { light: 0.5, dark: 0.5 },
      slots: [slot(1, 50), slot(2, 50)],
      borders: [border(1)],
    });
    expect(all.length).toBeGreaterThan(4);
    for (const told of all)
      expect(warningInWords(told)).toMatch(/^[A-Z0-9][^.]+\.( [A-Z][^.]+\.)?$/);
  });
});
