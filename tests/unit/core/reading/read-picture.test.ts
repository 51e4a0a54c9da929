import { describe, expect, test } from 'vitest';
import { readPicture } from '../../../../app/core/reading/read-picture.ts';
import {
  casePicture,
  type Opened,
  opened,
  painted,
  photographs,
  readFor,
  readPhoto,
} from '../../../support/reading/rasters.ts';
import { seeded } from '../../../support/reading/seeded.ts';
import { codes, sound } from '../../../support/reading/sound-reading.ts';

// Whole photographs on a busy machine.
describe('invariants', () => {
  const garden = (): Opened => {
    const random = seeded(30);
    return painted(240, 180, (x, y) => {
      const stray = Math.round(14 * random());
      if (y < 60) return [215 + stray, 225 + stray, 240];
      if ((x - 120) ** 2 + (y - 100) ** 2 < 1600) return [170 + stray, 60, 50 + stray];
      return x < 120 ? [70 + stray, 110, 50] : [25, 35 + stray, 30];
    });
  };

  const readGarden = readFor(garden());

  test('the same picture gives the same reading', async () => {
    expect(await readFor(garden())).toEqual(await readGarden);
  });

  test('mirrored in gives mirrored out', async () => {
    const { raster, clipped } = garden();
    const turn = (plane: Float32Array): Float32Array =>
      plane.map((_, i) => plane[i - (i % 240) + 239 - (i % 240)] as number);
    const mirror = {
      ...raster,
      red: turn(raster.red),
      green: turn(raster.green),
      blue: turn(raster.blue),
    };
    const one = await readGarden;
    const other = await readFor({ raster: mirror, clipped });
    expect(other.reading.bands.map(({ from }) => from)).toEqual(
      one.reading.bands.map(({ from }) => from),
    );
    let differ = 0;
    for (let i = 0; i < one.bandMap.length; i++) {
      const across = i - (i % 240) + 239 - (i % 240);
      if (one.bandMap[i] !== other.bandMap[across]) differ++;
    }
    // A float in the last place may tip single border pixels.
    expect(differ / one.bandMap.length).toBeLessThan(0.001);
  });

  // Fact of the trade (common practice, no source): value is not hue.
  test('other hues at equal lightness: the same bands; a strong tint is no white', async () => {
    const { raster, clipped } = garden();
    const other = { ...raster, red: raster.red.slice(), blue: raster.blue.slice() };
    const green = raster.green.slice();
    for (let i = 0; i < green.length; i++) {
      // Red and blue change places; green keeps Y where it was.
      const [r, b] = [raster.red[i] as number, raster.blue[i] as number];
      other.red[i] = 0.7 * b;
      other.blue[i] = 0.7 * r;
      const y =
        0.2126390058715103 * r +
        0.7151686787677559 * (raster.green[i] as number) +
        0.07219231536073371 * b;
      green[i] =
        (y - 0.2126390058715103 * 0.7 * b - 0.07219231536073371 * 0.7 * r) / 0.7151686787677559;
    }
    expect(green.every((value) => value >= 0 && value <= 1)).toBe(true);
    const before = await readGarden;
    const after = await readFor({ raster: { ...other, green }, clipped });
    const bands = ({ reading }: typeof before) =>
      reading.bands.map(({ from, to, share }) => [from, to, share]);
    expect(bands(after)).toEqual(bands(before));
    expect(after.bandMap).toEqual(before.bandMap);
    expect(before.reading.reserves.share).toBeGreaterThan(0.2);
    expect(after.reading.reserves.share).toBe(0); // its pale ground is now a strong yellow green
    expect(after.reading.families.map(({ name }) => name)).not.toEqual(
      before.reading.families.map(({ name }) => name),
    );
  });

  test('noise in the lowest bit changes no band', async () => {
    const random = seeded(41);
    const clean = await opened('tests/fixtures/cases/patches-srgb-untagged.png', 240);
    const shaken = {
      ...clean,
      raster: {
        ...clean.raster,
        green: clean.raster.green.map((value) =>
          Math.min(1, value * (random() < 0.01 ? 1.008 : 1)),
        ),
      },
    };
    const one = await readFor(clean);
    const other = await readFor(shaken);
    expect(other.reading.bands).toHaveLength(one.reading.bands.length);
    expect(other.reading.slots).toHaveLength(one.reading.slots.length);
    for (const [i, band] of one.reading.bands.entries()) {
      expect(other.reading.bands[i]?.share).toBeCloseTo(band.share, 2);
    }
  });
});

describe('wishes', () => {
  test.each([2, 3, 4, 5, 6, 7])('%i bands of a photograph', async (bands) => {
    const read = await readFor(await opened(photographs[1], 200), { bands });
    sound(read);
    expect(read.reading.bands).toHaveLength(bands);
  });

  test('her own limits, whatever the proposal', async () => {
    const picture = await opened(photographs[1], 200);
    const read = await readFor(picture, { limits: [30, 72] });
    sound(read);
    expect(read.reading.bands.map(({ from }) => from)).toEqual([72, 30, 0]);
    const far = await readFor(await opened(photographs[2], 200), { limits: [30, 99.99] });
    sound(far); // nothing lies above the upper limit: no empty band
    expect(far.reading.bands).toHaveLength(2);
  });

  test('range and families', async () => {
    const picture = await opened(photographs[0], 300);
    const { reading } = await readFor(picture, { range: 'photographed', families: 2 });
    expect([reading.range.mode, reading.families.length]).toEqual(['photographed', 2]);
  });

  test.each([
    [{ bands: 1 }],
    [{ bands: 8 }],
    [{ bands: 2.5 }],
    [{ limits: [0, 40] }],
    [{ limits: [Number.NaN] }],
    [{ families: 7 }],
  ])('%j is refused', async (wishes) => {
    await expect(readFor(await casePicture('one-pixel'), wishes)).rejects.toThrow(RangeError);
  });
});

/** Fine enough for what is said of them; the shares of small shapes in the forest need more pixels. */
const readWhole = (path: string) => readPhoto(path, path === photographs[2] ? 1000 : 400);

describe('photographs', () => {
  test.each(photographs)('%s', async (path) => {
    const read = await readWhole(path);
    sound(read);
    const { bands, families } = read.reading;
    expect(bands.length).toBeGreaterThanOrEqual(3);
    expect(bands.length).toBeLessThanOrEqual(5);
    expect(families.length).toBeGreaterThanOrEqual(2);
    expect(new Set(families.map(({ name }) => name)).size).toBe(families.length);
    for (const slot of read.reading.slots) expect(slot.shapes).toBeGreaterThan(0);
  });

  test('the forest is too broken for a quarter sheet, the seed heads are not', async () => {
    const forest = await readWhole(photographs[2]);
    expect(codes(forest.reading)[0]).toBe('too-broken');
    const seeds = await readWhole(photographs[0]);
    expect(codes(seeds.reading)).not.toContain('too-broken');
    const quarter = await readPhoto(photographs[2], 200);
    const full = await readPhoto(photographs[2], 200, { widthMm: 762, heightMm: 559 });
    expect(full.reading.brokenShare).toBeLessThan(quarter.reading.brokenShare);
  });

  test('snow and cloud stay paper', async () => {
    const { reading } = await readWhole(photographs[1]);
    expect(reading.reserves.share).toBeGreaterThan(0.05);
    expect(reading.bandsWhy).toEqual({ why: 'whites-merge' });
  });

  test('a sun and the pale sky about it stay paper, whatever the size of the copy', async () => {
    const copies = await Promise.all([200, 400].map((px) => readPhoto(photographs[0], px)));
    const [small = 0, large = 0] = copies.map(({ reading }) => reading.reserves.share);
    expect(large).toBeGreaterThan(0.03);
    expect(small).toBeGreaterThan(0.9 * large);
    expect(small).toBeLessThan(1.1 * large);
  });
});

test('a checkpoint that throws ends the reading, at any place', async () => {
  const { raster, clipped } = await opened(photographs[2], 150);
  const input = {
    raster,
    clipped,
    sheet: { widthMm: 381, heightMm: 279 },
    wishes: {},
    darkest: 12,
    paper: 95.5,
  };
  const parts: number[] = [];
  await readPicture(input, async (part) => void parts.push(part));
  expect(parts.length).toBeGreaterThan(40);
  expect([...parts].sort((x, y) => x - y)).toEqual(parts);
  expect(parts.at(-1)).toBe(1);
  for (const stop of [0, 17, parts.length - 1]) {
    let seen = 0;
    const stopping = readPicture(input, async () => {
      if (seen++ === stop) throw new Error('stopped');
    });
    await expect(stopping).rejects.toThrow('stopped');
    expect(seen).toBe(stop + 1);
  }
});
