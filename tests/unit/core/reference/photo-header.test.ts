import sharp from 'sharp';
import { expect, test } from 'vitest';
import { photoHeader, uprightSize } from '../../../../app/core/reference/photo-header.ts';
import { caseFile } from '../../../support/reference/case-file.ts';

const header = (name: string) => {
  const found = photoHeader(caseFile(name));
  if (!found) throw new Error(`${name}: no header`);
  return found;
};

// Sizes and kinds come from sharp (libvips), which reads the files by its own code.
test.each([
  'exif-orient-1.jpg',
  'exif-orient-6.jpg',
  'huge-108mp-12000x9000.jpg',
  'panorama-20000x500.jpg',
  'cmyk-adobe-marker.jpg',
  'really-a-jpeg.png',
  'png-16bit-grey.png',
  'line-5000x1.png',
  'animated.gif',
  'animated.webp',
  'picture.avif',
])('%s: kind, size and turn as another reader finds them', async (name) => {
  const theirs = await sharp(caseFile(name), { limitInputPixels: false }).metadata();
  const ours = header(name);
  const kind = theirs.format === 'heif' ? 'avif' : theirs.format;
  expect([ours.kind, ours.width, ours.height]).toEqual([kind, theirs.width, theirs.height]);
  expect(ours.orientation).toBe(theirs.orientation ?? 1);
  expect(ours.complete).toBe(true);
});

// Source: CIPA DC-008 (Exif 2.32), 2019, tag Orientation: 5 to 8 exchange width and height.
test.each([1, 2, 3, 4, 5, 6, 7, 8])('turn %i is read, and upright it is 480 x 320', (turn) => {
  const found = header(`exif-orient-${turn}.jpg`);
  expect(found.orientation).toBe(turn);
  expect(uprightSize(found)).toEqual({ width: 480, height: 320 });
});

test('a broken or lying EXIF block is not believed', () => {
  expect(header('exif-broken-offset.jpg')).toMatchObject({
    width: 480,
    height: 320,
    orientation: 1,
  });
  expect(header('exif-wrong-size.jpg')).toMatchObject({ width: 480, height: 320 });
  expect(header('exif-false-thumbnail.jpg')).toMatchObject({ width: 480, height: 320 });
});

test('lossy, lossless and extended WebP, BMP, HEIC', async () => {
  const source = sharp({ create: { width: 301, height: 77, channels: 4, background: '#8448' } });
  for (const options of [{ quality: 80 }, { lossless: true }]) {
    const bytes = new Uint8Array(await source.clone().webp(options).toBuffer());
    expect(photoHeader(bytes)).toMatchObject({ kind: 'webp', width: 301, height: 77 });
  }
  const opaque = new Uint8Array(await source.clone().removeAlpha().webp().toBuffer());
  expect(photoHeader(opaque)).toMatchObject({
    kind: 'webp',
    width: 301,
    height: 77,
    complete: true,
  });
  expect(photoHeader(opaque.subarray(0, -9))?.complete).toBe(false);
  expect(header('picture.bmp')).toMatchObject({ kind: 'bmp', width: 240, height: 160 });
  const bmp = caseFile('picture.bmp');
  expect(photoHeader(bmp)?.complete).toBe(true);
  expect(photoHeader(bmp.subarray(0, 27))?.complete).toBe(true);
  expect(photoHeader(bmp.subarray(0, 26))?.complete).toBe(false); // nothing after its header
  expect(header('picture.heic').kind).toBe('heic');
});

test('bytes a phone hangs on behind the end marker do no harm, nor does an end inside a thumbnail', () => {
  const whole = caseFile('exif-false-thumbnail.jpg');
  const longer = new Uint8Array([...whole, ...caseFile('zero-bytes.jpg'), 1, 2, 3, 255, 0]);
  expect(photoHeader(longer)?.complete).toBe(true);
  expect(photoHeader(whole.subarray(0, whole.length - 40))?.complete).toBe(false);
});

test('any cut-off of any header gives a header or null, never an error', () => {
  for (const name of ['exif-orient-5.jpg', 'png-8bit-grey.png', 'animated.webp', 'picture.avif']) {
    const whole = caseFile(name);
    for (let length = 0; length < Math.min(whole.length, 700); length++) {
      const found = photoHeader(whole.subarray(0, length));
      if (found) expect(found.complete && found.kind === 'jpeg').toBe(false);
    }
  }
});

/** A box of ISO/IEC 14496-12: its length and name, then what it holds. */
function box(name: string, ...content: (number | Uint8Array)[]): Uint8Array {
  const bytes = content.flatMap((part) => (typeof part === 'number' ? [part] : [...part]));
  const length = bytes.length + 8;
  return new Uint8Array([0, 0, length >> 8, length & 255, ...ascii(name), ...bytes]);
}
const ascii = (text: string): number[] => [...text].map((sign) => sign.charCodeAt(0));
const noFlags = [0, 0, 0, 0];
const sizeBox = (width: number, height: number): Uint8Array =>
  box('ispe', ...noFlags, 0, 0, width >> 8, width & 255, 0, 0, height >> 8, height & 255);

test('a box that ends with the file, and a rest too short to be one', () => {
  const ftyp = box('ftyp', ...ascii('heic'), ...noFlags, ...ascii('mif1'));
  const sizes = box('ipco', sizeBox(512, 512));
  const heic = (...rest: number[]) =>
    photoHeader(new Uint8Array([...ftyp, ...box('meta', ...noFlags, box('iprp', sizes)), ...rest]));
  expect(heic()).toMatchObject({ width: 512, height: 512 });
  // Seven bytes that begin as a box would; and one told as reaching far beyond the file.
  expect(heic(0, 0, 0, 20, ...ascii('isp'))).toEqual(heic());
  expect(heic(...sizeBox(4032, 3024).with(3, 200))).toMatchObject({ width: 4032, height: 3024 });
  // A length of 0 goes on to the end (ISO/IEC 14496-12, 4.2); one under 8 is none, and ends the search.
  expect(heic(...sizeBox(4032, 3024).with(3, 0))).toMatchObject({ width: 4032, height: 3024 });
  expect(heic(0, 0, 0, 7, ...ascii('free'), ...sizeBox(4032, 3024))).toEqual(heic());
});

// irot turns to the left by quarters (ISO/IEC 23008-12, 6.5.10); EXIF 8, 3, 6 undo a turn by 1, 2, 3 of them.
test.each([
  [0, 1],
  [1, 8],
  [2, 3],
  [3, 6],
])(
  'a HEIC turned by %i quarters has EXIF orientation %i, and the largest of its sizes',
  (quarters, orientation) => {
    const properties = box('ipco', sizeBox(512, 512), sizeBox(4032, 3024), box('irot', quarters));
    const heic = new Uint8Array([
      ...box('ftyp', ...ascii('heic'), ...noFlags, ...ascii('mif1')),
      ...box('meta', ...noFlags, box('iprp', properties)),
    ]);
    expect(photoHeader(heic)).toEqual({
      kind: 'heic',
      width: 4032,
      height: 3024,
      orientation,
      complete: true,
    });
  },
);

test('brands are the main one and those after the version; a version that spells one is none', () => {
  const ftyp = (main: string, version: string, ...compatible: string[]) =>
    photoHeader(
      new Uint8Array([
        ...box('ftyp', ...ascii(main + version + compatible.join(''))),
        ...new Uint8Array(40),
      ]),
    )?.kind ?? null;
  expect(ftyp('heic', 'xxxx')).toBe('heic');
  expect(ftyp('mif1', 'xxxx', 'miaf', 'avif')).toBe('avif');
  expect(ftyp('mp42', 'xxxx', 'isom', 'heix')).toBe('heic');
  expect(ftyp('mp42', 'heic', 'isom')).toBeNull();
});

/** A JPEG of 20 x 10 px (ITU-T T.81): start, frame, and a scan of these bytes. */
const jpegOf = (...scan: number[]): Uint8Array =>
  new Uint8Array([
    ...[0xff, 0xd8],
    ...[0xff, 0xc0, 0, 11, 8, 0, 10, 0, 20, 1, 1, 0x11, 0],
    ...[0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0],
    ...scan,
  ]);
const end = [0xff, 0xd9];

test.each([
  ['plain codes', [18, 52, ...end], true],
  ['no end', [18, 52], false],
  ['a stuffed 255', [18, 0xff, 0, 52, ...end], true],
  ['the coder started anew', [18, 0xff, 0xd0, 0, 1, 52, 0xff, 0xd7, 0, 1, ...end], true],
  ['and with a fill byte before', [18, 0xff, 0xff, 0xd0, 0, 1, 52, ...end], true],
  ['fill bytes before the end', [18, 0xff, 0xff, 0xff, 0xd9], true],
  ['an empty segment, which tells the length of its length', [18, 0xff, 0xfe, 0, 2, ...end], true],
  ['another segment after the scan', [18, 0xff, 0xfe, 0, 4, 0xff, 0xd9, ...end], true],
  ['one that tells a length under two', [18, 0xff, 0xfe, 0, 1, ...end], false],
])('a JPEG whose scan holds %s: whole or not', (_, scan, complete) => {
  expect(photoHeader(jpegOf(...scan))).toEqual({
    kind: 'jpeg',
    width: 20,
    height: 10,
    orientation: 1,
    complete,
  });
});
