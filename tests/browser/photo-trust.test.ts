import { afterEach, expect, test } from 'vitest';
import { readRaster } from '../../workers/photo/read-raster.ts';
import { casePhoto } from './support/case-photo.ts';
import { meanLightness, quarters } from './support/raster-lightness.ts';

const whole = { centre: [0.5, 0.5], size: [1, 1], turn: 0 } as const;
const context = OffscreenCanvasRenderingContext2D.prototype;
const honest = context.getImageData;

afterEach(() => {
  context.getImageData = honest;
});

/** A browser that changes the bytes it hands out. */
function falsify(change: (code: number, at: number, areaPx: number) => number): void {
  context.getImageData = function (x, y, width, height, settings) {
    const image = honest.call(this, x, y, width, height, settings);
    const area = this.canvas.width * this.canvas.height;
    for (let at = 0; at < image.data.length; at++) {
      image.data[at] = change(image.data[at] as number, at, area);
    }
    return image;
  };
}

const read = async (name: string) => readRaster(await casePhoto(name), whole, 1600, async () => {});

// A-COL-12, first run: the lowest bit of about one byte in a hundred
test('a played-with lowest bit is neither told nor seen', async () => {
  let seed = 1;
  falsify((code) => {
    seed = (seed * 1664525 + 1013904223) >>> 0;
    return seed < 2 ** 32 / 100 ? code ^ 1 : code;
  });
  const { raster, shaky } = await read('uniform-white.png');
  expect(shaky).toBe(false);
  expect(meanLightness(raster)).toBeGreaterThan(99.9);
  quarters((await read('exif-orient-1.jpg')).raster).forEach((lightness, i) => {
    expect(Math.abs(lightness - ([96.5, 69.6, 40.3, 6.3][i] as number))).toBeLessThan(1);
  });
});

test('small noise is read on and told', async () => {
  falsify((code, at) => code + (at % 2 ? 5 : -5));
  expect((await read('exif-orient-1.jpg')).shaky).toBe(true);
});

// A-COL-12, second run, and its like
test.each([
  ['all white', () => 255],
  ['all black', () => 0],
  ['random', (_: number, at: number) => (at * 2654435761) % 256],
] as const)('pixels handed out %s are refused in words', async (_, change) => {
  falsify(change);
  await expect(read('exif-orient-1.jpg')).rejects.toMatchObject({
    name: 'PhotoError',
    message: expect.stringMatching(/changed pixels.*another browser/),
  });
});

// A-BIG-4
test('where large canvases come back empty the picture is right all the same', async () => {
  falsify((code, _, areaPx) => (areaPx > 500_000 ? 0 : code));
  const { raster } = await read('just-over-ios-area-4100x4100.jpg');
  context.getImageData = honest;
  const expected = await read('just-over-ios-area-4100x4100.jpg');
  expect(Math.abs(meanLightness(raster) - meanLightness(expected.raster))).toBeLessThan(1e-6);
});
