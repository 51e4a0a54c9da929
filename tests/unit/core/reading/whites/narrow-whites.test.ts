import { expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { lightnessPlane } from '../../../../../app/core/raster/linear-raster.ts';
import { toneRange } from '../../../../../app/core/reading/tone-range.ts';
import { binsOf } from '../../../../../app/core/reading/values/list-bands.ts';
import { restoreNarrowWhites } from '../../../../../app/core/reading/whites/narrow-whites.ts';
import { rasterOf } from '../../../../support/reading/plain-raster.ts';
import { painted, readFor } from '../../../../support/reading/rasters.ts';

// All (own): no source says how narrow a white may be and still be painted round.

const width = 800;
const height = 600;
/** 2.1 px a mm on a quarter sheet. */
const pxPerMm = width / 381;

/** A white strip down the middle of two plain tones, `px` wide. */
const strip = (px: number, tone: readonly [number, number, number]) =>
  painted(width, height, (x) => {
    if (x >= 500 && x < 500 + px) return [250, 250, 248];
    return x < 300 ? [60, 60, 62] : tone;
  });

test.each([
  ['grey', 4, [84, 84, 84]],
  ['grey, 1 mm', 3, [84, 84, 84]],
  ['light grey', 4, [170, 170, 170]],
  ['red', 4, [150, 50, 40]],
] as const)(
  'a strip of half a per cent within %s stays white, all of it and no more',
  async (_, px, tone) => {
    const { reading, slotMap } = await readFor(strip(px, tone));
    const isWhite = [...slotMap].map((slot) => reading.slots[slot]?.reserve === true);
    const counts = { within: 0, elsewhere: 0 };
    isWhite.forEach((white, i) => {
      const x = i % width;
      if (!white) return;
      if (x >= 500 && x < 500 + px) counts.within++;
      else if (x < 500 - 1.5 * pxPerMm || x > 500 + px + 1.5 * pxPerMm) counts.elsewhere++;
    });
    expect(counts.within).toBeGreaterThan(0.95 * px * height);
    expect(counts.elsewhere).toBe(0);
    expect(reading.whites).toHaveLength(1);
  },
);

/** Whether each pixel of a row is white again: a field simplified to L* 50, in whose photo `places` are of that colour. */
function restored(places: (x: number, y: number) => boolean, colour: Lab = [98, 0, 0]) {
  const side = 40;
  const raster = rasterOf(side, side, (x, y) => (places(x, y) ? colour : [50, 0, 0]));
  const plane = (value: number) => new Float32Array(side * side).fill(value);
  const planes = { lightness: plane(50), a: plane(0), b: plane(0) };
  const lightnessMap = binsOf(planes.lightness);
  const range = toneRange('photographed', 20, 90, 15, 95);
  const seenBins = binsOf(lightnessPlane(raster));
  restoreNarrowWhites(planes, lightnessMap, seenBins, raster, range, 4);
  expect(lightnessMap).toEqual(binsOf(planes.lightness));
  return planes.lightness.reduce((sum, lightness) => sum + (lightness > 97 ? 1 : 0), 0);
}

test('what is white for a millimetre across and down comes back, lines thinner than that do not', () => {
  expect(restored((x) => x >= 10 && x < 14)).toBe(4 * 40);
  expect(restored((x) => x >= 10 && x < 13)).toBe(0);
  expect(restored((_, y) => y >= 10 && y < 14)).toBe(4 * 40);
  expect(restored((_, y) => y >= 10 && y < 13)).toBe(0);
  expect(restored((x, y) => x >= 20 && x < 24 && y >= 20 && y < 24)).toBe(16);
  expect(restored((x, y) => (x + y) % 2 === 0)).toBe(0); // noise
});

test('only what is paper: light and nearly neutral', () => {
  expect(restored((x) => x < 8, [98, 0, 7])).toBe(8 * 40);
  expect(restored((x) => x < 8, [98, 0, 9])).toBe(0);
  expect(restored((x) => x < 8, [88, 0, 0])).toBe(0);
});
