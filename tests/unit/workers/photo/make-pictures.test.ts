import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { emptyRaster } from '../../../../app/core/raster/linear-raster.ts';
import {
  encodeJpeg,
  makePreview,
  makeRasterBitmaps,
} from '../../../../workers/photo/make-pictures.ts';

/** A canvas that notes what is done on it; its file is its size, as text. */
class NotedCanvas {
  static readonly made: NotedCanvas[] = [];
  readonly done: string[] = [];
  constructor(
    readonly width: number,
    readonly height: number,
  ) {
    NotedCanvas.made.push(this);
  }
  getContext(_kind: string, options: object) {
    this.done.push(JSON.stringify(options));
    const note =
      (name: string) =>
      (...given: unknown[]) => {
        const numbers = given.filter((each) => typeof each === 'number');
        this.done.push(`${name} ${numbers.join(' ')}`);
      };
    return { putImageData: note('put'), drawImage: note('draw'), fillRect: note('fill') };
  }
  async convertToBlob({ type, quality }: { type: string; quality: number }) {
    return new Blob([`${type} ${quality} ${this.width} x ${this.height}`]);
  }
  transferToImageBitmap() {
    return { width: this.width, height: this.height };
  }
}

beforeEach(() => {
  vi.stubGlobal('OffscreenCanvas', NotedCanvas);
  NotedCanvas.made.length = 0;
});
afterEach(() => vi.unstubAllGlobals());

const canvasOptions = '{"alpha":false,"colorSpace":"srgb"}';
const textOf = (bytes: ArrayBuffer): string => new TextDecoder().decode(bytes);

test('a picture no longer than wanted is encoded as it is', async () => {
  const picture = { width: 300, height: 200 } as ImageData;
  expect(textOf(await encodeJpeg(picture, 300, 0.9))).toBe('image/jpeg 0.9 300 x 200');
  expect(NotedCanvas.made.map(({ done }) => done)).toEqual([[canvasOptions, 'put 0 0']]);
});

test.each([
  [300, 200, 150, '150 x 100'],
  [200, 300, 150, '100 x 150'],
  [301, 200, 150, '150 x 100'], // 99.7
  [3000, 1, 480, '480 x 1'],
])('%i x %i px with a long side of %i: %s', async (width, height, longSide, size) => {
  const bytes = await encodeJpeg({ width, height } as ImageData, longSide, 0.85);
  expect(textOf(bytes)).toBe(`image/jpeg 0.85 ${size}`);
  const [full, small] = NotedCanvas.made;
  expect([full?.width, full?.height]).toEqual([width, height]);
  expect(small?.done.at(-1)).toBe(`draw 0 0 ${size.replace(' x', '')}`);
});

test.each([
  [4000, 3000, 1600, 1600, 1200],
  [3000, 4000, 1600, 1200, 1600],
  [800, 600, 1600, 800, 600], // never enlarged
  [1, 5000, 1600, 1, 1600],
])(
  'a preview of %i x %i px, at most %i: %i x %i on white',
  (width, height, longSide, wide, high) => {
    const made = makePreview({} as ImageBitmap, { width, height }, longSide);
    expect([made.width, made.height]).toEqual([wide, high]);
    expect(NotedCanvas.made[0]?.done).toEqual([
      canvasOptions,
      `fill 0 0 ${wide} ${high}`,
      `draw 0 0 ${wide} ${high}`,
    ]);
  },
);

test('a raster in colour and in true grey, both of its size', async () => {
  class Pixels {
    constructor(
      readonly data: Uint8ClampedArray,
      readonly width: number,
      readonly height: number,
    ) {}
  }
  vi.stubGlobal('ImageData', Pixels);
  vi.stubGlobal('createImageBitmap', async (picture: Pixels) => picture);
  const raster = emptyRaster(2, 1);
  raster.red[0] = 1; // full red beside black
  const { reference, grey, picture } = (await makeRasterBitmaps(raster)) as unknown as Record<
    string,
    Pixels
  >;
  expect(reference).toBe(picture);
  expect([...(picture?.data ?? [])]).toEqual([255, 0, 0, 255, 0, 0, 0, 255]);
  expect([grey?.width, grey?.height]).toEqual([2, 1]);
  // Full red has a luminance of 0.2126 (IEC 61966-2-1): code 127 as a grey.
  const [red, , , , black] = grey?.data ?? [];
  expect(Math.abs((red ?? 0) - 127)).toBeLessThanOrEqual(1);
  expect(black).toBe(0);
});
