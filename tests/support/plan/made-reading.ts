import type { Lab } from '../../../app/core/colour/lab.ts';
import { defaultPaperLab } from '../../../app/core/paint/colour-of-washes.ts';
import { darkestOf, usualPaints } from '../../../app/core/palette/library/mix-library.ts';
import type { Border, RangeMode, Reading } from '../../../app/core/reading/reading.ts';
import type { Slot } from '../../../app/core/reading/slot.ts';
import { reservesOf, retargeted, toneRange } from '../../../app/core/reading/tone-range.ts';

/** What every reading counts on: hundreds of mixes, looked at once. */
const usualDarkest = darkestOf(usualPaints);

/** One slot as a test writes it down. */
export interface MadeSlot {
  readonly band: number;
  readonly family: number;
  readonly share: number;
  readonly lab: Lab;
  readonly passage?: string;
  readonly shapes?: number;
  readonly smallShapes?: number;
}

export type MadeBorder = Pick<Border, 'a' | 'b' | 'lengthMm' | 'soft'> & Partial<Border>;

/**
 * A reading without a picture: slots by hand, targets and reserves by the app's own rule. The percentiles of
 * a picture lie a little outside the means of its slots.
 */
export function madeReading(
  made: readonly MadeSlot[],
  borders: readonly MadeBorder[] = [],
  mode: RangeMode = 'opened',
): Reading {
  const lightnesses = made.map((slot) => slot.lab[0]);
  const range = toneRange(
    mode,
    Math.max(0, Math.min(...lightnesses) - 6),
    Math.min(100, Math.max(...lightnesses) + 2),
    usualDarkest,
    defaultPaperLab[0],
  );
  const raw: Slot[] = made.map((slot) => ({
    passage: slot.passage ?? 'sheet',
    band: slot.band,
    family: slot.family,
    share: slot.share,
    lab: slot.lab,
    target: slot.lab,
    reserve: false,
    shapes: slot.shapes ?? 3,
    smallShapes: slot.smallShapes ?? 0,
    largestMm2: 2000,
  }));
  const slots = retargeted(raw, range);
  const bandCount = Math.max(1, ...made.map((slot) => slot.band));
  return {
    engine: 'made',
    raster: { width: 100, height: 75 },
    sheet: { widthMm: 381, heightMm: 279 },
    lightness: { histogram: new Array<number>(256).fill(0), p5: 20, p50: 50, p95: 90 },
    bands: Array.from({ length: bandCount }, (_, i) => ({
      band: i + 1,
      from: 0,
      to: 100,
      share: 1 / bandCount,
      lightness: 50,
      value: 5,
      plannedLightness: 50,
    })),
    proposedBands: bandCount,
    bandsWhy: '',
    families: [...new Set(made.map((slot) => slot.family))].map((id) => ({
      id,
      lab: [50, 0, 0],
      share: 0.5,
      name: `colour ${id}`,
    })),
    slots,
    borders: borders.map((border) => ({ contrast: 20, lost: 0, ...border })),
    reserves: reservesOf(slots),
    range,
    brokenShare: 0,
    warnings: [],
  };
}

/**
 * Bands of these lightnesses in families of these colours, equal shares. Dark shapes of a photo are less
 * colourful than mid ones, and so are those near white: a* and b* fall towards both ends.
 */
export function tableOf(
  lightnesses: readonly number[],
  colours: readonly (readonly [a: number, b: number])[],
): MadeSlot[] {
  const share = 1 / (lightnesses.length * colours.length);
  return lightnesses.flatMap((lightness, i) =>
    colours.map(([a, b], f) => {
      const colourful = Math.min(1, lightness / 60, (100 - lightness) / 16);
      return {
        band: i + 1,
        family: f + 1,
        share,
        lab: [lightness - f, a * colourful, b * colourful] as const,
      };
    }),
  );
}
