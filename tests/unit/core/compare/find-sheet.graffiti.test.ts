import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { findSheet } from '../../../../app/core/compare/find-sheet.ts';
import { type Corners, cornersOf, project } from '../../../../app/core/compare/homography.ts';
import { noCheckpoint } from '../../../../app/core/palette/checkpoint.ts';
import { reducePicture } from '../../../support/reading/rasters.ts';

// One wall photographed from two sides with the homography between them: graf1, graf3 and H1to3p of Debian's
// opencv-doc, from Mikolajczyk, K. and others (2005), A comparison of affine region detectors, Int. J. Comput. Vis.
// 65, 43-72. Elsewhere than there: OPENCV_DOC=/folder/of/them.
const folder = process.env.OPENCV_DOC ?? '/usr/share/doc/opencv-doc/examples/data';
const names = ['graf1.png', 'graf3.png', 'H1to3p.xml'].map((name) => join(folder, name));
const isThere = names.every((name) => existsSync(name));

async function rasterOf(file: string) {
  const { data, info } = await sharp(file)
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const rgba = new Uint8ClampedArray(data.buffer, data.byteOffset, data.length);
  return reducePicture(rgba, info, { width: info.width, height: info.height }).raster;
}

test.skipIf(!isThere)(
  'a wall seen from the side is laid on itself as its makers measured (opencv-doc: graf1, graf3, H1to3p)',
  async () => {
    const [one, three] = [await rasterOf(names[0] as string), await rasterOf(names[1] as string)];
    const numbers = /<data>([^<]*)<\/data>/.exec(readFileSync(names[2] as string, 'utf8'))?.[1];
    const truth = Float64Array.from((numbers ?? '').trim().split(/\s+/), Number);
    expect(truth).toHaveLength(9);
    const corners = cornersOf(one.width, one.height);
    const seen = corners.map(([x, y]) => project(truth, x, y));
    // As a finger would draw them: each 12 px off another way.
    const drawn = seen.map(([x, y], n) => {
      const turn = 1 + (n * Math.PI) / 2;
      return [
        (x + 12 * Math.cos(turn)) / three.width,
        (y + 12 * Math.sin(turn)) / three.height,
      ] as const;
    });
    const place = await findSheet(three, one, noCheckpoint, drawn as unknown as Corners);
    const off = (place?.corners ?? []).map(([x, y], n) => {
      const [u, v] = seen[n] as readonly [number, number];
      return Math.hypot(x * three.width - u, y * three.height - v);
    });
    console.log(
      `${place?.sureness}, corners off by ${off.map((px) => px.toFixed(1)).join(', ')} px`,
    );
    expect(place?.sureness).not.toBe('not sure');
    // 1 % of the longer side is what is asked of corners (own limit).
    expect(Math.max(...off)).toBeLessThan(0.01 * one.width);
  },
);
