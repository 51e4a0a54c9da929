import { describe, expect, test } from 'vitest';
import {
  flatnessWarnings,
  pictureWarnings,
} from '../../../../app/core/reading/picture-warnings.ts';
import type { Reading } from '../../../../app/core/reading/reading.ts';
import { warningInWords } from '../../../../app/core/words/reading/warnings.ts';
import { madeReading, tableOf } from '../../../support/plan/made-reading.ts';
import { uprightEdge } from '../../../support/reading/made-edge.ts';

/** Counts by bin, L* x 2.55. */
const histogramOf = (counts: Readonly<Record<number, number>>): number[] =>
  Array.from({ length: 256 }, (_, bin) => counts[bin] ?? 0);
/** A tenth each at 10 bins apart all over the scale: full key, no third over 80 %. */
const even = histogramOf(
  Object.fromEntries([0, 28, 57, 85, 113, 142, 170, 198, 227, 255].map((bin) => [bin, 10])),
);

const plain = madeReading(
  tableOf(
    [97, 70, 50, 20],
    [
      [10, 10],
      [-10, -10],
    ],
  ),
);
const reading: Reading = {
  ...plain,
  raster: { width: 800, height: 600 },
  lightness: { ...plain.lightness, histogram: even },
};
const none = { light: 0, dark: 0 };

// Limits and figures are (own): the docstrings of what is tested say why.
describe('what is told of a reading as a whole', () => {
  const codes = (changed: Partial<Reading>, wished?: number, tones = 9) =>
    pictureWarnings({ reading: { ...reading, ...changed }, clipped: none, wished, tones }).map(
      ({ code }) => code,
    );
  const bands = (count: number) => ({ bands: reading.bands.slice(0, count) });

  test('nothing where nothing is amiss', () => expect(codes({}, 4)).toEqual([]));

  test('all of it as light as the paper: nothing to paint, and no word of tones', () => {
    const slots = reading.slots.map((slot) => ({ ...slot, reserve: true }));
    expect(codes({ slots, ...bands(1) }, undefined, 1)).toEqual(['nothing-to-paint']);
  });

  test.each([
    ['fewer bands than she wished, for want of tones', 3, 4, 6, true],
    ['as many as she wished', 3, 3, 6, false],
    ['the picture has tones enough', 3, 4, 7, false],
    ['one band where she wished nothing', 1, undefined, 1, true],
    ['two bands where she wished nothing', 2, undefined, 2, false],
    ['more wished than there ever are: seven', 4, 9, 6, true],
  ])('few tones: %s', (_, count, wished, tones, said) => {
    expect(codes(bands(count), wished, tones).includes('few-tones')).toBe(said);
  });

  test('one value is said in words', () => {
    const [first] = pictureWarnings({
      reading: { ...reading, ...bands(1) },
      clipped: none,
      wished: 3,
      tones: 1,
    });
    expect(first && warningInWords(first)).toMatch(/no more than one value:/);
    const [two] = pictureWarnings({
      reading: { ...reading, ...bands(2) },
      clipped: none,
      wished: 3,
      tones: 2,
    });
    expect(two && warningInWords(two)).toMatch(/no more than 2 values:/);
  });

  test('over a third in shapes too small', () => {
    expect(codes({ brokenShare: 1 / 3 })).toEqual([]);
    expect(codes({ brokenShare: 0.34 })).toEqual(['too-broken']);
  });

  test('under 400 px on the long side', () => {
    expect(codes({ raster: { width: 300, height: 400 } })).toEqual([]);
    expect(codes({ raster: { width: 399, height: 300 } })).toEqual(['small-picture']);
  });

  test('nearly every edge hard', () => {
    const edges = [uprightEdge(0.5, { lengthMm: 400 })];
    expect(codes({ edges })).toEqual(['all-hard']);
    expect(codes({ edges: [] })).toEqual([]);
  });

  test('of one tone nothing is said of flatness', () => {
    expect(codes({ ...bands(1), slots: reading.slots.slice(0, 3) }, 1)).toEqual([]);
    expect(codes({ slots: reading.slots.slice(0, 3) }, 4)).toContain('no-darks');
  });
});

describe('what is flat or lost', () => {
  const slots = reading.slots;
  const border = { a: 2, b: 3, lengthMm: 100, contrast: 5, soft: 0, lost: 0 };
  const codes = (changed: Partial<Parameters<typeof flatnessWarnings>[0]>) =>
    flatnessWarnings({ histogram: even, clipped: none, slots, borders: [border], ...changed }).map(
      ({ code }) => code,
    );

  test('a span of 40 L* from 5 to 95 % is not flat, a bin less is', () => {
    // Bins 50 and 152 are 40 L* apart.
    expect(codes({ histogram: histogramOf({ 50: 50, 152: 50 }) })).not.toContain('flat');
    expect(codes({ histogram: histogramOf({ 51: 50, 152: 50 }) })).toContain('flat');
  });

  test('no dark under Munsell value 3, 30.4 L*', () => {
    const darkest = (lightness: number) =>
      codes({
        slots: slots.map((slot) => ({
          ...slot,
          lab: [Math.max(lightness, slot.lab[0]), 0, 0] as const,
        })),
      });
    expect(darkest(30.3)).toEqual([]);
    expect(darkest(30.4)).toEqual(['no-darks']);
  });

  test.each([
    ['over half of a border between two colours', { lost: 0.51 }, true],
    ['half of it', { lost: 0.5 }, false],
    ['within one colour', { lost: 0.9, a: 2, b: 4 }, false],
  ])('shapes that merge: %s', (_, changed, said) => {
    expect(codes({ borders: [{ ...border, ...changed }] }).includes('merge')).toBe(said);
  });

  test('borders of 4 % of all and less are not worth a sentence', () => {
    const short = (lengthMm: number) =>
      codes({
        borders: [
          { ...border, lengthMm: 96 },
          { ...border, lost: 0.9, lengthMm },
        ],
      }).includes('merge');
    expect([short(4), short(4.1)]).toEqual([false, true]);
  });

  test.each([
    [0.02, 0.02, []],
    [0.021, 0, ['clipped-light']],
    [0, 0.021, ['clipped-dark']],
  ])('%f light and %f dark lost by the camera', (light, dark, said) => {
    expect(codes({ clipped: { light, dark } })).toEqual(said);
  });

  test.each([
    [84, 'darks'],
    [86, 'mid tones'],
    [170, 'mid tones'],
    [171, 'lights'],
  ])('over 80 %% of it in one third of the scale, about bin %i: the %s', (bin, where) => {
    // 19 in a hundred at the other ends keep the span wide and the key full.
    const ends = bin < 128 ? { 0: 6, 255: 13 } : { 0: 13, 255: 6 };
    const found = flatnessWarnings({
      histogram: histogramOf({ ...ends, [bin]: bin === 84 || bin === 171 ? 76 : 81 }),
      clipped: none,
      slots,
      borders: [],
    }).filter(({ code }) => code === 'one-third');
    expect(found.map(warningInWords)[0]).toMatch(
      new RegExp(`% of the picture lies in the ${where}:`),
    );
  });

  test('80 % in one third is not too much', () => {
    const share = (middle: number) =>
      codes({ histogram: histogramOf({ 0: 10, 255: 10, 120: middle }) }).includes('one-third');
    expect([share(80), share(82)]).toEqual([false, true]);
  });
});
