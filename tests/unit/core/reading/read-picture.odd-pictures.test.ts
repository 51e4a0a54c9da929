import { describe, expect, test } from 'vitest';
import { casePicture, painted, readFor } from '../../../support/reading/rasters.ts';
import { seeded } from '../../../support/reading/seeded.ts';
import { codes, sound } from '../../../support/reading/sound-reading.ts';

describe('single tones', () => {
  test.each([
    ['uniform-white', 100],
    ['uniform-black', 0],
    ['uniform-grey-119', 50.03],
  ])('%s is one band, one family', async (name, lightness) => {
    const read = await readFor(await casePicture(name));
    sound(read);
    const { bands, families, slots, borders } = read.reading;
    expect([bands.length, families.length, slots.length, borders.length]).toEqual([1, 1, 1, 0]);
    expect(bands[0]).toMatchObject({ from: 0, to: 100, share: 1 });
    expect(Math.abs((bands[0]?.lightness ?? -1) - lightness)).toBeLessThan(0.01);
    expect(codes(read.reading)[0]).toBe(lightness === 100 ? 'nothing-to-paint' : 'few-tones');
  });
});

describe('few tones', () => {
  test.each([
    ['two-tone-255-0', 0.5, 0, 100],
    ['two-tone-160-80', 0.75, 33, 66],
  ])('%s: two bands, the limit between the tones', async (name, share, low, high) => {
    const read = await readFor(await casePicture(name));
    sound(read);
    const { bands } = read.reading;
    expect(bands).toHaveLength(2);
    const largest = Math.max(...bands.map((band) => band.share));
    expect(Math.abs(largest - share)).toBeLessThan(0.005);
    expect(bands[0]?.from).toBeGreaterThan(low);
    expect(bands[0]?.from).toBeLessThan(high);
  });

  test.each([5, 7])('three tones with %i bands wished: three, and a sentence', async (wished) => {
    const read = await readFor(await casePicture('three-tone'), { bands: wished });
    sound(read);
    expect(read.reading.bands).toHaveLength(3);
    expect(codes(read.reading)).toContain('few-tones');
    const shares = read.reading.bands.map(({ share }) => share).sort();
    for (const [i, wanted] of [106 / 320, 107 / 320, 107 / 320].entries()) {
      expect(Math.abs((shares[i] as number) - wanted)).toBeLessThan(0.005);
    }
  });
});

describe('odd sizes', () => {
  test.each([
    [1, 1],
    [1, 50],
    [50, 1],
    [2, 2],
    [3, 90],
  ])('%i x %i px', async (width, height) => {
    const random = seeded(width);
    const code = (): number => Math.floor(256 * random());
    const picture = painted(width, height, () => [code(), code(), code()]);
    for (const bands of [undefined, 2, 7]) sound(await readFor(picture, bands ? { bands } : {}));
  });

  test('a line of 5000 px', async () => sound(await readFor(await casePicture('line-5000x1'))));

  test('a fine check is one tone', async () => {
    const read = await readFor(await casePicture('checker-1px-1024'));
    sound(read);
    const { p5, p95 } = read.reading.lightness;
    expect(Math.abs(p5 - 76)).toBeLessThan(1);
    expect(p95 - p5).toBeLessThan(1);
  });
});
