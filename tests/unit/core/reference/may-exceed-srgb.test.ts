import { readFile } from 'node:fs/promises';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { mayExceedSrgb } from '../../../../app/core/reference/may-exceed-srgb.ts';
import { casePath } from '../../../support/plan/run-command.ts';

const picture = () => sharp(casePath('patches-srgb-untagged.png'));

const formats = ['jpeg', 'webp', 'avif'] as const;

describe('a photo may exceed sRGB', () => {
  test.each(formats)('as %s by its profile, not with that of sRGB, not without', async (format) => {
    const wide = await picture().withIccProfile('p3').toFormat(format).toBuffer();
    const plain = await picture().withIccProfile('srgb').toFormat(format).toBuffer();
    const none = await picture().toFormat(format).toBuffer();
    expect([wide, plain, none].map((bytes) => mayExceedSrgb(bytes))).toEqual([true, false, false]);
  });

  test.each([
    ['patches-p3-tagged.png', true],
    ['patches-p3-tagged.jpg', true],
    ['p3-out-of-gamut.png', true],
    ['patches-srgb-untagged.png', false],
    ['exif-orient-6.jpg', false],
    ['cmyk-adobe-marker.jpg', false],
    ['png-8bit-grey.png', false],
    ['picture.bmp', false],
    ['picture.avif', false],
    ['animated.webp', false],
    ['animated.gif', false],
    ['zero-bytes.jpg', false],
    ['text-named.jpg', false],
  ])('%s: %s', async (name, expected) => {
    expect(mayExceedSrgb(await readFile(casePath(name)))).toBe(expected);
  });

  test('a profile of ink or grey is none of red, green and blue', async () => {
    const inks = await picture().toColourspace('cmyk').withIccProfile('cmyk').jpeg().toBuffer();
    expect(inks.includes('ICC_PROFILE')).toBe(true);
    expect(mayExceedSrgb(inks)).toBe(false);
  });

  test.each([
    [1, false],
    [2, false],
    [9, true],
    [12, true],
  ])('a PNG with primaries number %i: %s, whatever its profile', async (primaries, expected) => {
    const plain = await readFile(casePath('p3-out-of-gamut.png'));
    const chunk = Buffer.from([
      0,
      0,
      0,
      4,
      ...Buffer.from('cICP'),
      primaries,
      13,
      0,
      1,
      0,
      0,
      0,
      0,
    ]);
    const end = plain.indexOf('IDAT') - 4;
    const tagged = Buffer.concat([plain.subarray(0, end), chunk, plain.subarray(end)]);
    expect(mayExceedSrgb(tagged)).toBe(expected);
  });

  test('an AVIF tells primaries by number too', async () => {
    const bytes = await picture().withIccProfile('p3').avif().toBuffer();
    const place = bytes.indexOf('colrrICC') + 8;
    bytes.write('nclx', place - 4, 'latin1');
    for (const [primaries, expected] of [
      [1, false],
      [9, true],
      [12, true],
    ] as const) {
      bytes.writeUInt16BE(primaries, place);
      expect(mayExceedSrgb(bytes)).toBe(expected);
    }
  });

  test.each(['jpeg', 'png', 'webp', 'avif'] as const)(
    'a cut-off %s ends and throws nothing',
    async (format) => {
      const whole = await picture().withIccProfile('p3').toFormat(format).toBuffer();
      for (let length = 0; length < Math.min(900, whole.length); length++) {
        expect(typeof mayExceedSrgb(whole.subarray(0, length))).toBe('boolean');
      }
    },
  );
});
