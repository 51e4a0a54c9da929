import { afterEach, describe, expect, test, vi } from 'vitest';
import { uprightSize } from '../../app/core/reference/photo-header.ts';
import { decodePhoto } from '../../workers/photo/decode-photo.ts';
import { engineTurn, uprightMatrix } from '../../workers/photo/photo-turn.ts';
import { readRaster } from '../../workers/photo/read-raster.ts';
import { casePhoto } from './support/case-photo.ts';
import { quarters } from './support/raster-lightness.ts';
import { decode, unturnedEngines as engines } from './support/unturned-engines.ts';

afterEach(() => vi.unstubAllGlobals());

describe.each(Object.entries(engines))('an engine that %s', (_, engine) => {
  // A-ORI-1: the same picture, stored in all eight ways
  test.each([1, 2, 3, 4, 5, 6, 7, 8])('turn %s stands upright', async (turn) => {
    vi.stubGlobal('createImageBitmap', engine);
    const photo = await casePhoto(`exif-orient-${turn}.jpg`);
    const crop = { centre: [0.5, 0.5], size: [1, 1], turn: 0 } as const;
    const { raster } = await readRaster(photo, crop, 1600, async () => {}, 3 / 2);
    expect([raster.width, raster.height]).toEqual([480, 320]);
    const bar = 80 * 480 + 5; // red, on the left
    expect(raster.red[bar]).toBeGreaterThan(3 * (raster.green[bar] as number));
    // Quarters of the base picture: L* of the greys 245, 170, 95, 20 (CIE 15, IEC 61966-2-1).
    const seen = quarters(raster);
    [96.5, 69.6, 40.3, 6.3].forEach((lightness, i) => {
      expect(Math.abs((seen[i] as number) - lightness)).toBeLessThan(1.5);
    });
  });
});

test('a large photo is reduced before it is turned, to the same size as elsewhere', async () => {
  const photo = await casePhoto('exif-orient-6.jpg');
  const sizes = [];
  for (const engine of [decode, engines['passes the wish over']]) {
    vi.stubGlobal('createImageBitmap', engine);
    const { bitmap, size } = await decodePhoto(photo, 40_000);
    sizes.push([bitmap.width, bitmap.height, size.width, size.height]);
    bitmap.close();
  }
  expect(sizes[1]).toEqual(sizes[0]);
  expect(sizes[0]?.slice(2)).toEqual([480, 320]);
});

test('where the engine turns photos itself nothing is turned again', async () => {
  expect(await engineTurn()).toEqual({ options: { imageOrientation: 'from-image' }, turns: true });
  vi.stubGlobal('createImageBitmap', engines['does not know the word']);
  expect(await engineTurn()).toEqual({ options: {}, turns: false });
});

test('the four corners of a stored photo come to the corners of the upright one', () => {
  const stored = { width: 7, height: 4 };
  for (let turn = 1; turn <= 8; turn++) {
    const [a, b, c, d, e, f] = uprightMatrix(turn, stored);
    const { width, height } = uprightSize({ ...stored, orientation: turn });
    const corners = [0, 7].flatMap((x) =>
      [0, 4].map((y) => [a * x + c * y + e, b * x + d * y + f]),
    );
    expect(new Set(corners.map(String))).toEqual(
      new Set([`0,0`, `${width},0`, `0,${height}`, `${width},${height}`]),
    );
  }
});
