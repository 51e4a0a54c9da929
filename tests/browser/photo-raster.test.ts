import { describe, expect, test } from 'vitest';
import { colourDifference } from '../../app/core/colour/ciede2000.ts';
import { type Lab, labOfLinear } from '../../app/core/colour/lab.ts';
import { linearOfCode } from '../../app/core/colour/srgb.ts';
import { lightnessPlane } from '../../app/core/raster/linear-raster.ts';
import { centredCrop, fitSheet } from '../../app/core/reference/reference.ts';
import { decodedPhotoSize, largestAreaPx } from '../../workers/photo/decode-photo.ts';
import { readRaster } from '../../workers/photo/read-raster.ts';
import { patchColours, widePatches } from '../support/reading/wide-patches.ts';
import { casePhoto } from './support/case-photo.ts';
import { lightnessAt, meanLightness, quarters } from './support/raster-lightness.ts';
import { recordCanvases } from './support/record-canvases.ts';

const canvases = recordCanvases();
const whole = { centre: [0.5, 0.5], size: [1, 1], turn: 0 } as const;

const read = async (name: string, longSidePx = 1600, type = '') =>
  readRaster(await casePhoto(name, type), whole, longSidePx, async () => {});

/** L* of the greys 245, 170, 95, 20 (CIE 15, IEC 61966-2-1), as the base picture shows them. */
const base = [96.5, 69.6, 40.3, 6.3];

async function expectBase(name: string, within: number): Promise<void> {
  const { raster, shaky } = await read(name);
  expect(shaky).toBe(false);
  quarters(raster).forEach((lightness, i) => {
    expect(Math.abs(lightness - (base[i] as number)), `quarter ${i + 1}`).toBeLessThanOrEqual(
      within,
    );
  });
}

// A-ORI-1, 3, 4, 5
test.each([
  ...[1, 2, 3, 4, 5, 6, 7, 8].map((turn) => `exif-orient-${turn}.jpg`),
  'exif-wrong-size.jpg',
  'exif-broken-offset.jpg',
  'exif-false-thumbnail.jpg',
])('%s stands upright with its red bar on the left', async (name) => {
  const { raster } = await read(name);
  expect([raster.width, raster.height]).toEqual([480, 320]);
  await expectBase(name, 1);
  const at = 80 * 480 + 5; // the bar
  expect(raster.red[at]).toBeGreaterThan(3 * (raster.green[at] as number));
});

// A-FMT-2, 7, 9, 10; A-COL-5, 6
test.each([
  ['really-a-jpeg.png', 1],
  ['animated.gif', 3],
  ['animated.webp', 3],
  ['picture.bmp', 1],
  ['picture.avif', 3],
  ['png-16bit-rgb.png', 1],
  ['png-16bit-grey.png', 1],
  ['png-8bit-grey.png', 1],
])('%s shows the base picture', (name, within) => expectBase(name, within));

// A-COL-1
test.each(['patches-p3-tagged.png', 'patches-p3-tagged.jpg'])(
  '%s is read through its profile',
  async (name) => {
    const ours = await read(name);
    const plain = await read('patches-srgb-untagged.png');
    for (const x of [1, 3, 5, 7]) {
      for (const y of [0.25, 0.75]) {
        const place = [ours.raster, plain.raster].map((raster) => lightnessAt(raster, x / 8, y));
        expect(Math.abs((place[0] as number) - (place[1] as number))).toBeLessThan(1);
      }
    }
  },
);

// A-COL-4: no ink, half black, nearly black
test('a CMYK photo is neither inverted nor black', async () => {
  const { raster } = await read('cmyk-adobe-marker.jpg');
  [100, 53.6, 9.3].forEach((lightness, i) => {
    expect(Math.abs(lightnessAt(raster, (2 * i + 1) / 8, 0.25) - lightness)).toBeLessThan(2);
  });
});

// A-COL-3
test.each(widePatches)('%s keeps its colours beyond sRGB', async (name, truth) => {
  const { raster, shaky } = await read(name);
  expect(shaky).toBe(false);
  patchColours(raster).forEach((colour, i) => {
    expect(colourDifference(colour, truth[i] as Lab), `patch ${i + 1}`).toBeLessThan(0.6);
  });
});

/** A photo of one colour, given in CSS, kept with the profile of its canvas. */
async function flatPhoto(colour: string, type: string, sidePx: number): Promise<Blob> {
  const canvas = new OffscreenCanvas(sidePx, sidePx);
  const context = canvas.getContext('2d', { colorSpace: 'display-p3' });
  if (!context) throw new Error('no canvas');
  context.fillStyle = colour;
  context.fillRect(0, 0, sidePx, sidePx);
  return canvas.convertToBlob({ type, quality: 1 });
}

const middleColour = async (photo: Blob, turn = 0): Promise<Lab> => {
  const crop = { centre: [0.5, 0.5], size: [0.5, 0.5], turn } as const;
  const { raster } = await readRaster(photo, crop, 1600, async () => {});
  const middle = (raster.height >> 1) * raster.width + (raster.width >> 1);
  const light = [raster.red[middle], raster.green[middle], raster.blue[middle]] as [
    number,
    number,
    number,
  ];
  return labOfLinear(...light);
};

// Lab of the codes 255, 120, 0 and 20, 160, 60 of Display P3, as culori has them
const orange: Lab = [66.436, 57.887, 102.427];
const leafGreen: Lab = [56.915, -73.802, 48.352];

describe('of a strong colour of Display P3', () => {
  test.each([
    ['an orange PNG', 'color(display-p3 1 0.470588 0)', 'image/png', orange, 64, 0],
    ['an orange JPEG', 'color(display-p3 1 0.470588 0)', 'image/jpeg', orange, 64, 0],
    ['a turned cut', 'color(display-p3 1 0.470588 0)', 'image/png', orange, 64, 10],
    ['a leaf green', 'color(display-p3 0.078431 0.627451 0.235294)', 'image/png', leafGreen, 64, 0],
    ['one decoded smaller', 'color(display-p3 1 0.470588 0)', 'image/png', orange, 4100, 0],
  ] as const)('%s is read true', async (_, colour, type, truth, sidePx, turn) => {
    const photo = await flatPhoto(colour, type, sidePx);
    expect(colourDifference(await middleColour(photo, turn), truth)).toBeLessThan(0.6);
  });

  test.each([
    ['without such a canvas', 'getImageData'],
    ['without such colours in CSS', 'fillStyle'],
  ])('a browser %s reads it clipped to sRGB', async (_, missing) => {
    const photo = await flatPhoto('color(display-p3 1 0.470588 0)', 'image/png', 64);
    const context = OffscreenCanvasRenderingContext2D.prototype;
    const honest = Object.getOwnPropertyDescriptor(context, missing) as PropertyDescriptor;
    const changed: PropertyDescriptor =
      missing === 'fillStyle'
        ? {
            ...honest,
            set(colour: string) {
              if (!colour.startsWith('color(')) honest.set?.call(this, colour);
            },
          }
        : {
            ...honest,
            value(x: number, y: number, width: number, height: number) {
              return honest.value.call(this, x, y, width, height, { colorSpace: 'srgb' });
            },
          };
    Object.defineProperty(context, missing, changed);
    try {
      const off = colourDifference(await middleColour(photo), orange);
      expect(off).toBeGreaterThan(6);
      expect(off).toBeLessThan(9);
    } finally {
      Object.defineProperty(context, missing, honest);
    }
  });
});

test('a photo in sRGB is read from an sRGB canvas, its codes untouched', async () => {
  const { raster } = await read('patches-srgb-untagged.png', 480);
  for (const plane of [raster.red, raster.green, raster.blue]) {
    expect(plane.every((light) => linearOfCode.includes(light))).toBe(true);
  }
});

// A-COL-7, 8
test('what is transparent is paper white', async () => {
  const hidden = await read('png-alpha-hidden-black.png');
  expect(lightnessAt(hidden.raster, 0.01, 0.01)).toBeCloseTo(100, 1);
  expect(lightnessAt(hidden.raster, 0.5, 0.5)).toBeLessThan(60);
  expect(meanLightness((await read('png-fully-transparent.png')).raster)).toBeCloseTo(100, 1);
});

// A-COL-9: half the light, whatever the size; one pixel of it then is L* 76
test('a fine check keeps its mean light at any working size', async () => {
  for (const longSidePx of [1024, 800, 512, 300]) {
    const { raster } = await read('checker-1px-1024.png', longSidePx);
    const light = raster.green.reduce((sum, green) => sum + green, 0) / raster.green.length;
    expect(Math.abs(light - 0.5)).toBeLessThan(0.001);
  }
  const { raster } = await read('checker-1px-1024.png', 512);
  expect(Math.abs(meanLightness(raster) - 76)).toBeLessThan(1);
});

// A-BIG-5, 6, 7
test.each([
  ['panorama-20000x500.jpg', 1600, 40],
  ['line-5000x1.png', 1600, 1],
  ['one-pixel.png', 1, 1],
])('%s keeps its shape', async (name, width, height) => {
  const { raster } = await read(name);
  expect([raster.width, raster.height]).toEqual([width, height]);
});

// A-BIG-2, 8
test.each([
  ['huge-108mp-12000x9000.jpg', 1600, 1200],
  ['just-over-ios-area-4100x4100.jpg', 1600, 1600],
])('%s: no canvas over 16,777,216 px, and both sides as derived', async (name, width, height) => {
  const { raster } = await read(name);
  expect([raster.width, raster.height]).toEqual([width, height]);
  expect(canvases.areas.length).toBeGreaterThan(0);
  expect(Math.max(...canvases.areas)).toBeLessThanOrEqual(largestAreaPx);
});

test('the greys of the 108-megapixel photo cover what they cover', async () => {
  const { raster } = await read('huge-108mp-12000x9000.jpg');
  // greys 225 / 150 / 70 / 30 and their L* (CIE 15); shares from the picture's own drawing
  const expected = [
    [89.2, 0.333],
    [62.1, 0.292],
    [29.6, 0.292],
    [11.0, 0.083],
  ] as const;
  const counts = expected.map(() => 0);
  const plane = lightnessPlane(raster);
  for (const lightness of plane) {
    const nearest = expected.reduce(
      (best, [level], i) =>
        Math.abs(level - lightness) < Math.abs((expected[best]?.[0] ?? 0) - lightness) ? i : best,
      0,
    );
    counts[nearest] = (counts[nearest] ?? 0) + 1;
  }
  expected.forEach(([, share], i) => {
    expect(Math.abs((counts[i] as number) / plane.length - share)).toBeLessThan(0.01);
  });
});

test('a crop turned by a quarter shows the left side on top', async () => {
  const photo = await casePhoto('exif-orient-1.jpg');
  const crop = { centre: [0.5, 0.5], size: [320 / 480, 480 / 320], turn: 90 } as const;
  const { raster } = await readRaster(photo, crop, 1600, async () => {});
  expect([raster.width, raster.height]).toEqual([320, 480]);
  // clockwise: what was left below (40.3) comes left above, what was left above right above
  const seen = [
    [0.25, 0.25, 40.3],
    [0.7, 0.3, 96.5],
    [0.25, 0.75, 6.3],
    [0.75, 0.75, 69.6],
  ] as const;
  for (const [x, y, lightness] of seen) {
    expect(Math.abs(lightnessAt(raster, x, y) - lightness)).toBeLessThan(1);
  }
});

test('a crop of the right lower quarter, slightly turned, is dark all over', async () => {
  const photo = await casePhoto('exif-orient-1.jpg');
  const crop = { centre: [0.75, 0.75], size: [0.3, 0.3], turn: 5 } as const;
  const { raster } = await readRaster(photo, crop, 1600, async () => {});
  expect(meanLightness(raster)).toBeLessThan(7.5);
});

/** Bytes of a PNG with an eXIf chunk (PNG Third Edition, W3C 2025, 11.3.4.7) that turns it by a quarter. */
async function turnedPng(width: number, height: number): Promise<Blob> {
  const canvas = new OffscreenCanvas(width, height);
  canvas.getContext('2d')?.fillRect(0, 0, width, height);
  const plain = new Uint8Array(await (await canvas.convertToBlob()).arrayBuffer());
  // One entry of a TIFF directory: tag 0x0112, SHORT, 1, value 6 (CIPA DC-008, 2019).
  const tiff = [77, 77, 0, 42, 0, 0, 0, 8, 0, 1, 1, 18, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0];
  const named = new Uint8Array([...new TextEncoder().encode('eXIf'), ...tiff]);
  let crc = 0xffffffff;
  for (const byte of named) {
    crc ^= byte;
    for (let k = 0; k < 8; k++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  const chunk = new Uint8Array(8 + named.length);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, tiff.length);
  chunk.set(named, 4);
  view.setUint32(4 + named.length, ~crc >>> 0);
  const headEnd = 8 + 25; // signature and IHDR
  return new Blob([plain.slice(0, headEnd), chunk, plain.slice(headEnd)], { type: 'image/png' });
}

test('a turned PNG: its size is that of the decoded picture, and a crop by its header is refused', async () => {
  const photo = await turnedPng(400, 300);
  const decoded = await createImageBitmap(photo, { imageOrientation: 'from-image' });
  const size = await decodedPhotoSize(photo);
  expect(size).toEqual({ width: decoded.width, height: decoded.height });
  expect(size).toEqual({ width: 300, height: 400 }); // Chromium turns it
  const sheet = { format: 'own', widthMm: 400, heightMm: 300 } as const;
  const wrong = centredCrop({ width: 400, height: 300 }, sheet);
  const reading = readRaster(photo, wrong, 1600, async () => {}, 4 / 3);
  await expect(reading).rejects.toMatchObject({ name: 'CropError' });
  const right = fitSheet(size, sheet);
  expect(right.sheet).toMatchObject({ widthMm: 300, heightMm: 400 });
  const { raster } = await readRaster(photo, right.crop, 1600, async () => {}, 3 / 4);
  expect([raster.width, raster.height]).toEqual([300, 400]);
});
