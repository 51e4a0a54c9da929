import { afterEach, expect, test } from 'vitest';
import { engineTurn, turnUpright, uprightMatrix } from '../../../../workers/photo/photo-turn.ts';

// Engines and canvases are made here; what they do with a turned photo is told by the tests' names.
const page = globalThis as { createImageBitmap?: unknown; OffscreenCanvas?: unknown };
const before = { ...page };
afterEach(() => {
  page.createImageBitmap = before.createImageBitmap;
  page.OffscreenCanvas = before.OffscreenCanvas;
});

/** An engine that decodes the photo to such a size in each way; null where it refuses. */
async function turnOf(fromImage: readonly number[] | null, plain: readonly number[] | null) {
  let closed = 0;
  let bytes = 0;
  page.createImageBitmap = async (photo: Blob, { imageOrientation }: ImageBitmapOptions) => {
    bytes = photo.size;
    const size = imageOrientation === 'from-image' ? fromImage : plain;
    if (!size) throw new TypeError('refused');
    return { width: size[0], height: size[1], close: () => closed++ };
  };
  const turn = await engineTurn();
  expect(bytes).toBeGreaterThan(100); // it was a photo
  expect(closed).toBe(
    turn.turns && fromImage?.[1] === 2 ? 1 : [fromImage, plain].filter(Boolean).length,
  );
  return turn;
}
const [lying, standing] = [
  [2, 1],
  [1, 2],
] as const;
const asked = { imageOrientation: 'from-image' };

test('the way in which an engine turns photos is taken, else the first it knows', async () => {
  expect(await turnOf(standing, standing)).toEqual({ options: asked, turns: true });
  expect(await turnOf(lying, standing)).toEqual({ options: {}, turns: true });
  expect(await turnOf(null, standing)).toEqual({ options: {}, turns: true });
  expect(await turnOf(lying, lying)).toEqual({ options: asked, turns: false });
  expect(await turnOf(null, lying)).toEqual({ options: {}, turns: false });
  expect(await turnOf(lying, null)).toEqual({ options: asked, turns: false });
});

test('an engine that decodes nothing counts as one that turns: what it lacks is another thing', async () => {
  expect(await turnOf(null, null)).toEqual({ options: asked, turns: true });
});

test('a photo is brought upright pixel for pixel, in its own colours, and the stored one closed', () => {
  const told: unknown[] = [];
  const context = {
    imageSmoothingEnabled: true,
    setTransform: (...matrix: number[]) => told.push(matrix),
    drawImage: (image: unknown, x: number, y: number) =>
      told.push([image === stored, x, y, context.imageSmoothingEnabled]),
  };
  let has = true;
  page.OffscreenCanvas = class {
    constructor(
      readonly width: number,
      readonly height: number,
    ) {}
    getContext = (kind: string, options: object) => {
      told.push([kind, options]);
      return has ? context : null;
    };
    transferToImageBitmap = () => [this.width, this.height];
  };
  let closed = 0;
  const stored = { width: 30, height: 20, close: () => closed++ } as unknown as ImageBitmap;
  expect(turnUpright(stored, 6, 'display-p3')).toEqual([20, 30]);
  expect(told).toEqual([
    ['2d', { colorSpace: 'display-p3' }],
    uprightMatrix(6, stored),
    [true, 0, 0, false],
  ]);
  expect(closed).toBe(1);
  expect(turnUpright(stored, 3, 'srgb')).toEqual([30, 20]);
  has = false;
  expect(turnUpright(stored, 6, 'srgb')).toBeNull();
  expect(closed).toBe(2); // the one that could not be turned is still open
});
