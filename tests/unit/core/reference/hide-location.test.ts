import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { hideLocation } from '../../../../app/core/reference/hide-location.ts';

// Tags are written by libvips and libexif, by CIPA DC-008 (EXIF 2.32); pixels are read by libvips.

const exif = {
  IFD0: { Copyright: 'hers', Make: 'a camera' },
  IFD2: { FNumber: '28/10' },
  IFD3: {
    GPSLatitudeRef: 'N',
    GPSLatitude: '52/1 31/1 4723/100',
    GPSLongitudeRef: 'E',
    GPSLongitude: '13/1 24/1 1851/100',
    GPSDateStamp: '2026:11:30',
  },
};
const xmp =
  '<?xpacket begin="" id="W5M0MpCehiHzreSzNTczkc9d"?><x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description xmlns:exif="http://ns.adobe.com/exif/1.0/" xmlns:dc="http://purl.org/dc/elements/1.1/" exif:GPSLatitude="52,31.787N" dc:format="image/jpeg"><exif:GPSLongitude>13,24.3085E</exif:GPSLongitude></rdf:Description></rdf:RDF></x:xmpmeta><?xpacket end="w"?>';

const seedHeads = () =>
  sharp({ create: { width: 64, height: 48, channels: 3, background: { r: 200, g: 160, b: 90 } } });

const kinds = ['jpeg', 'png', 'webp', 'avif'] as const;

const tagged = (kind: (typeof kinds)[number]): Promise<Buffer> =>
  seedHeads()
    .withExif(exif)
    .withXmp(xmp)
    .withMetadata({ orientation: 6 })
    .toFormat(kind, { lossless: false })
    .toBuffer();

/** The tags and values of the directory GPS, as a reader of tags finds them; null without one. */
function placeTags(block: Buffer): number[] | null {
  const start = block.indexOf('Exif\0\0') === 0 ? 6 : 0;
  const little = block.toString('latin1', start, start + 2) === 'II';
  const pair = (i: number) => (little ? block.readUInt16LE(i) : block.readUInt16BE(i));
  const four = (i: number) => (little ? block.readUInt32LE(i) : block.readUInt32BE(i));
  const tagsOf = (directory: number) =>
    Array.from({ length: pair(directory) }, (_, i) => directory + 2 + 12 * i);
  const pointer = tagsOf(start + four(start + 4)).find((entry) => pair(entry) === 0x8825);
  return pointer === undefined ? null : tagsOf(start + four(pointer + 8)).map(pair);
}

describe.each(kinds)('%s', (kind) => {
  test('says no place any more; turn, other tags and pixels are as they were', async () => {
    const before = await tagged(kind);
    const after = Buffer.from(hideLocation(before));
    const [was, is] = [await sharp(before).metadata(), await sharp(after).metadata()];
    expect(placeTags(was.exif ?? Buffer.of())).toContain(2);
    expect(placeTags(is.exif ?? Buffer.of())).toEqual([0]);
    expect(is.orientation).toBe(was.orientation);
    if (kind === 'jpeg') expect(is.orientation).toBe(6);
    expect(is.exif?.includes('a camera')).toBe(true);
    expect(after.includes('2026:11:30')).toBe(false);
    expect(after.includes('52,31.787N') || after.includes('13,24.3085E')).toBe(false);
    expect(is.xmp?.toString()).toContain('dc:format="image/jpeg"');
    expect(await sharp(after).raw().toBuffer()).toEqual(await sharp(before).raw().toBuffer());
    expect(after.length).toBe(before.length);
  });

  test('changes nothing but the tags of the place, and nothing where there are none', async () => {
    const before = await tagged(kind);
    const after = hideLocation(before);
    const apart = before.reduce((sum, byte, i) => sum + (byte === after[i] ? 0 : 1), 0);
    expect(apart).toBeGreaterThan(40);
    expect(apart).toBeLessThan(320); // the directory, its values, two properties, check sums
    expect(hideLocation(after)).toBe(after);
    const plain = await seedHeads().withExif({ IFD0: exif.IFD0 }).toFormat(kind).toBuffer();
    expect(hideLocation(plain)).toBe(plain);
  });
});

test('a second picture and a moving one behind the photo say no place either', async () => {
  const jpeg = await tagged('jpeg');
  const atom = Buffer.from('\x00\x00\x00\x1e\xa9xyz\x00\x12\x15\xc7+52.5200+013.4050/', 'latin1');
  const after = Buffer.from(hideLocation(Buffer.concat([jpeg, jpeg, atom])));
  const alone = Buffer.from(hideLocation(jpeg));
  expect(after.subarray(0, jpeg.length).equals(alone)).toBe(true);
  expect(after.subarray(jpeg.length, 2 * jpeg.length).equals(alone)).toBe(true);
  expect(after.subarray(2 * jpeg.length).toString('latin1')).toContain('+00.0000+000.0000/');
});

test('what is broken, cut short or no photo is left alone or blanked, and never throws', async () => {
  const jpeg = await tagged('jpeg');
  for (let length = 0; length < Math.min(jpeg.length, 900); length += 7)
    expect(hideLocation(jpeg.subarray(0, length)).length).toBe(length);
  // A directory that points to itself, and one whose value is said to be as long as the file.
  const loop = Buffer.from([
    73, 73, 42, 0, 8, 0, 0, 0, 1, 0, 0x69, 0x87, 4, 0, 1, 0, 0, 0, 8, 0, 0, 0, 8, 0, 0, 0,
  ]);
  expect(hideLocation(loop)).toBe(loop);
});
