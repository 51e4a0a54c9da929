import { fewestBands, mostBands } from '../limits.ts';
import type { ClippedShares } from '../raster/linear-raster.ts';
import { capitalize } from '../words/numbers.ts';
import { formatPercent } from '../words/reading-words.ts';
import { isNearlyAllHard } from './edges/edge.ts';
import type { Border, Reading, Warning } from './reading.ts';
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
export function pictureWarnings({ reading, clipped, wished, tones }: WarningFacts): Warning[] {
  const found: Warning[] = [];
  const { slots, borders, bands, brokenShare, raster } = reading;
  const { histogram } = reading.lightness;
  if (slots.every((slot) => slot.reserve)) {
    found.push({
      code: 'nothing-to-paint',
      text: 'Everything in this picture is as light as the paper: there is nothing to paint. Choose another photo.',
    });
  } else if (
    bands.length < Math.max(fewestBands, Math.min(wished ?? fewestBands, mostBands)) &&
    tones < mostBands
  ) {
    const count = bands.length === 1 ? 'one value' : `${bands.length} values`;
    found.push({
      code: 'few-tones',
      text: `The picture holds no more than ${count}: that is all the study can show. Choose a photo with more light and shade if you want more.`,
    });
  }
  if (brokenShare > tooBroken) {
    found.push({
      code: 'too-broken',
      text: 'Much of this photo is too fine for your sheet. Use a bigger sheet, crop in, or use fewer values.',
    });
  }
  if (bands.length > 1) found.push(...flatnessWarnings({ histogram, clipped, slots, borders }));
  if (isNearlyAllHard(reading.edges ?? [], reading.sheet)) {
    found.push({
      code: 'all-hard',
      text: 'Nearly every edge is hard, which looks stiff and cut out: choose some away from the centre of interest to soften or lose.',
    });
  }
  if (Math.max(raster.width, raster.height) < smallLongSidePx) {
    found.push({
      code: 'small-picture',
      text: 'The photo is very small, so shapes and edges are rough: use the original photo if you have it.',
    });
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
function fullestThird(histogram: ArrayLike<number>): { share: number; where: string } {
  const sums = [0, 0, 0];
  for (let bin = 0; bin < bins; bin++) {
    const third = Math.min(2, Math.floor((bin * 3) / bins));
    sums[third] = sums[third] + (histogram[bin] ?? 0);
  }
  const all = sums.reduce((x, y) => x + y, 0);
  const most = Math.max(...sums);
  const where = ['darks', 'mid tones', 'lights'][sums.indexOf(most)] ?? 'mid tones';
  return { share: all > 0 ? most / all : 0, where };
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
export function flatnessWarnings({ histogram, clipped, slots, borders }: FlatnessFacts): Warning[] {
  const found: Warning[] = [];
  const say = (code: Warning['code'], text: string): void => void found.push({ code, text });
  const key = pictureKey(histogram);
  const span = percentile(histogram, 0.95) - percentile(histogram, 0.05);
  if (span < flatSpan) {
    say(
      'flat',
      'The photo is flat, its lights and darks lie close together: open the values up, or take it again in stronger light.',
    );
  }
  if (key === 'high') {
    say(
      'high-key',
      'High key, nearly everything is light: keep the washes pale and spend your few darks where you want the eye.',
    );
  }
  if (key === 'low') {
    say(
      'low-key',
      'Low key, nearly everything is dark: guard the few lights and mix the darks strong from the start.',
    );
  }
  if (key !== 'high' && !slots.some((slot) => slot.lab[0] < darkLightness)) {
    say(
      'no-darks',
      'There is no real dark in it: choose one place near the centre of interest and paint it darker than you see it.',
    );
  }
  if (mergesSomewhere(slots, borders)) {
    say(
      'merge',
      'Shapes of different colour meet at the same value and will run together: make one of them lighter or darker, or let the edge go.',
    );
  }
  if (clipped.light > clippedShare) {
    say(
      'clipped-light',
      `${capitalize(formatPercent(clipped.light))} of the photo is blown out to white. Leave it as paper, or look at the real thing.`,
    );
  }
  if (clipped.dark > clippedShare) {
    say(
      'clipped-dark',
      `${capitalize(formatPercent(clipped.dark))} of the photo is lost in black. Look at the real thing for colour in those shadows.`,
    );
  }
  const third = fullestThird(histogram);
  if (key === 'full' && third.share > oneThirdShare) {
    say(
      'one-third',
      `${formatPercent(third.share)} of the picture lies in the ${third.where}: push some shapes lighter or darker so that it does not look even.`,
    );
  }
  return found;
}
