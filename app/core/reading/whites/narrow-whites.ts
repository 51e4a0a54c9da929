import { reserveChroma, reserveWithin } from '../../limits.ts';
import { type LabPlanes, type LinearRaster, writePixelLab } from '../../raster/linear-raster.ts';
import type { ToneRange } from '../reading.ts';
import { onTheSheet } from '../tone-range.ts';
import { binOf, bins, lightnessOfBin } from '../values/list-bands.ts';

/** Simplifying greys what is not much wider than its window: a white of so many mm is still one to paint round (own). */
const narrowestMm = 1;
/** Fewer px are noise or the rim of a sharpened photo. */
const leastPx = 3;

/** What a pixel is: no white, white by itself, that in a long enough row, and in a long enough column too. */
const [alone, inRow, bothWays] = [1, 2, 3];

/** 1 for every bin of lightness that is planned within `reserveWithin` of the paper. */
export const paleBins = (range: ToneRange): Uint8Array =>
  Uint8Array.from({ length: bins }, (_, bin) =>
    range.paper - onTheSheet(range, lightnessOfBin(bin)) <= reserveWithin ? 1 : 0,
  );

export const isNeutral = (a: number, b: number): boolean => a * a + b * b < reserveChroma ** 2;

/** Along a line of `count` pixels `by` apart: where at least `least` in a row are `from`, they become `from` + 1. */
function markRuns(
  whites: Uint8Array,
  start: number,
  by: number,
  count: number,
  least: number,
  from: number,
): void {
  let length = 0;
  for (let n = 0; n <= count; n++) {
    if (n < count && whites[start + n * by] >= from) {
      length++;
      continue;
    }
    if (length >= least) {
      for (let k = n - length; k < n; k++) whites[start + k * by] = from + 1;
    }
    length = 0;
  }
}

/**
 * Gives the simplified planes back the narrow whites of the photo, in place: pixels that are paper as they are and
 * greyed by simplifying, as far as they go on for `narrowestMm` across and down. `seenBins` holds the bins of the
 * raster's L*, `lightnessMap` those of the planes' lightness and is kept in step.
 */
export function restoreNarrowWhites(
  { lightness, a, b }: LabPlanes,
  lightnessMap: Uint8Array,
  seenBins: Uint8Array,
  raster: LinearRaster,
  range: ToneRange,
  pxPerMm: number,
  whites = new Uint8Array(seenBins.length),
): void {
  const isPale = paleBins(range);
  whites.fill(0);
  const lab = new Float64Array(3);
  let found = 0;
  for (let i = 0; i < seenBins.length; i++) {
    if (isPale[seenBins[i]] === 0) continue;
    writePixelLab(raster, i, lab);
    if (!isNeutral(lab[1], lab[2])) continue;
    whites[i] = alone;
    if (isPale[lightnessMap[i]] === 0) found++;
  }
  if (found === 0) return;
  const { width, height } = raster;
  const least = Math.max(leastPx, Math.round(narrowestMm * pxPerMm));
  for (let y = 0; y < height; y++) markRuns(whites, y * width, 1, width, least, alone);
  for (let x = 0; x < width; x++) markRuns(whites, x, width, height, least, inRow);
  for (let i = 0; i < whites.length; i++) {
    if (whites[i] !== bothWays || isPale[lightnessMap[i]] === 1) continue;
    writePixelLab(raster, i, lab);
    lightness[i] = lab[0];
    a[i] = lab[1];
    b[i] = lab[2];
    lightnessMap[i] = binOf(lab[0]);
  }
}
