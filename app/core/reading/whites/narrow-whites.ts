import { reserveChroma, reserveWithin } from '../../limits.ts';
import { type LabPlanes, type LinearRaster, writePixelLab } from '../../raster/linear-raster.ts';
import type { PixelSize } from '../../raster/size.ts';
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

/** Along a row of pixels: where at least `least` one after the other are white, they become `inRow`. */
function markRow(whites: Uint8Array, start: number, width: number, least: number): void {
  const end = start + width;
  for (let i = start, length = 0; i <= end; i++) {
    if (i < end && whites[i] >= alone) {
      length++;
      continue;
    }
    if (length >= least) whites.fill(inRow, i - length, i);
    length = 0;
  }
}

/** Along all columns, row by row: where at least `least` one below the other are `inRow`, they become `bothWays`. */
function markColumns(whites: Uint8Array, { width, height }: PixelSize, least: number): void {
  const lengths = new Int32Array(width);
  for (let y = 0, i = 0; y <= height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (y < height && whites[i] >= inRow) {
        lengths[x]++;
        continue;
      }
      if (lengths[x] >= least) {
        for (let k = 1; k <= lengths[x]; k++) whites[i - k * width] = bothWays;
      }
      lengths[x] = 0;
    }
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
  for (let y = 0; y < height; y++) markRow(whites, y * width, width, least);
  markColumns(whites, raster, least);
  for (let i = 0; i < whites.length; i++) {
    if (whites[i] !== bothWays || isPale[lightnessMap[i]] === 1) continue;
    writePixelLab(raster, i, lab);
    lightness[i] = lab[0];
    a[i] = lab[1];
    b[i] = lab[2];
    lightnessMap[i] = binOf(lab[0]);
  }
}
