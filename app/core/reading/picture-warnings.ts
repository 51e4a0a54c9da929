import { fewestBands, mostBands } from '../limits.ts';
import type { ClippedShares } from '../raster/linear-raster.ts';
import { isNearlyAllHard } from './edges/edge.ts';
import type { Border, Reading, ReadingWarning } from './reading.ts';
import type { Slot } from './slot.ts';
import { bins, percentile, pictureKey } from './values/list-bands.ts';

/** More of the area than this in shapes under 5 x 5 mm is too broken for the sheet. */
const tooBroken = 1 / 3;
/** Fewer px than this on the long side show no brush-scale shapes on a usual sheet (own). */
const smallLongSidePx = 400;

interface WarningFacts {
  readonly reading: Omit<Reading, 'warnings'>;
  readonly clipped: ClippedShares;
  /** Bands she wished, and tones the picture holds. */
  readonly wished: number | undefined;
  readonly tones: number;
}

/** Everything worth telling about a reading, the most important first. */
export function pictureWarnings({
  reading,
  clipped,
  wished,
  tones,
}: WarningFacts): ReadingWarning[] {
  const found: ReadingWarning[] = [];
  const { slots, borders, bands, brokenShare, raster } = reading;
  const { histogram } = reading.lightness;
  if (slots.every((slot) => slot.reserve)) {
    found.push({ code: 'nothing-to-paint' });
  } else if (
    bands.length < Math.max(fewestBands, Math.min(wished ?? fewestBands, mostBands)) &&
    tones < mostBands
  ) {
    found.push({ code: 'few-tones', values: bands.length });
  }
  if (brokenShare > tooBroken) {
    found.push({ code: 'too-broken' });
  }
  if (bands.length > 1) found.push(...flatnessWarnings({ histogram, clipped, slots, borders }));
  if (isNearlyAllHard(reading.edges ?? [], reading.sheet)) {
    found.push({ code: 'all-hard' });
  }
  if (Math.max(raster.width, raster.height) < smallLongSidePx) {
    found.push({ code: 'small-picture' });
  }
  return found;
}

/** 5-95 % span of lightness under which a picture is flat, L* (own). */
const flatSpan = 40;
/** Munsell value 3 (ASTM D1535) as L*: nothing darker means no darks (own). */
const darkLightness = 30.4;
/** A third of the scale that holds more than this, and lost pixels beyond this share, are worth a word (own). */
const oneThirdShare = 0.8;
const clippedShare = 0.02;
/** Under this difference of lightness neighbours merge, where it holds along most of their border (own). */
const mostOfBorder = 0.5;
/** Shorter borders than this share of all borders are not worth a sentence (own). */
const longBorder = 0.04;

interface FlatnessFacts {
  /** Simplified lightness, 256 bins. */
  readonly histogram: ArrayLike<number>;
  readonly clipped: ClippedShares;
  readonly slots: readonly Slot[];
  readonly borders: readonly Border[];
}

/** The fullest third of the scale: its share of the picture and where it lies. */
function fullestThird(
  histogram: ArrayLike<number>,
): Pick<Extract<ReadingWarning, { code: 'one-third' }>, 'share' | 'third'> {
  const sums = [0, 0, 0];
  for (let bin = 0; bin < bins; bin++) {
    const third = Math.min(2, Math.floor((bin * 3) / bins));
    sums[third] = sums[third] + (histogram[bin] ?? 0);
  }
  const all = sums.reduce((x, y) => x + y, 0);
  const most = Math.max(...sums);
  const third = (['darks', 'mids', 'lights'] as const)[sums.indexOf(most)] ?? 'mids';
  return { share: all > 0 ? most / all : 0, third };
}

/** Whether shapes of different hue meet at equal value along most of a long border. */
function mergesSomewhere(slots: readonly Slot[], borders: readonly Border[]): boolean {
  const all = borders.reduce((sum, border) => sum + border.lengthMm, 0);
  return borders.some(
    ({ a, b, lengthMm, lost }) =>
      slots[a]?.family !== slots[b]?.family && lost > mostOfBorder && lengthMm > longBorder * all,
  );
}

/** What is flat about the picture or lost in it, the most important first. */
export function flatnessWarnings({
  histogram,
  clipped,
  slots,
  borders,
}: FlatnessFacts): ReadingWarning[] {
  const found: ReadingWarning[] = [];
  const key = pictureKey(histogram);
  const span = percentile(histogram, 0.95) - percentile(histogram, 0.05);
  if (span < flatSpan) found.push({ code: 'flat' });
  if (key === 'high') found.push({ code: 'high-key' });
  if (key === 'low') found.push({ code: 'low-key' });
  if (key !== 'high' && !slots.some((slot) => slot.lab[0] < darkLightness))
    found.push({ code: 'no-darks' });
  if (mergesSomewhere(slots, borders)) found.push({ code: 'merge' });
  if (clipped.light > clippedShare) found.push({ code: 'clipped-light', share: clipped.light });
  if (clipped.dark > clippedShare) found.push({ code: 'clipped-dark', share: clipped.dark });
  const third = fullestThird(histogram);
  if (key === 'full' && third.share > oneThirdShare) {
    found.push({ code: 'one-third', ...third });
  }
  return found;
}
