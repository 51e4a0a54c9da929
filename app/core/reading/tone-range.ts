import { reserveWithin } from '../limits.ts';
import type { RangeMode, ToneRange } from './reading.ts';
import type { ReserveSummary, Slot, ToneMeans } from './slot.ts';

/**
 * How the reference's lightness is brought into what the sheet can do. `lo` and `hi` are the 1st and
 * 99th percentile of simplified lightness, `darkest` the darkest the paints reach, `paper` the paper;
 * all L*. As photographed keeps the picture's own key; opened up uses the whole span of the sheet.
 */
export function toneRange(
  mode: RangeMode,
  lo: number,
  hi: number,
  darkest: number,
  paper: number,
): ToneRange {
  const dark = mode === 'opened' ? darkest : Math.max(darkest, (lo * paper) / 100);
  return { mode, lo, hi, dark, paper, darkest };
}

/** The same picture and paints in the other, or the same, way. */
export const rangeIn = (mode: RangeMode, { lo, hi, dark, darkest, paper }: ToneRange): ToneRange =>
  toneRange(mode, lo, hi, darkest ?? dark, paper);

/** The share of the way from `lo` to the light end, for a lightness already clamped for its mode. */
function mapped(range: ToneRange, lightness: number): number {
  const top = range.mode === 'opened' ? range.hi : 100;
  if (top <= range.lo) return lightness >= 50 ? range.paper : range.dark; // a single tone
  return range.dark + ((lightness - range.lo) / (top - range.lo)) * (range.paper - range.dark);
}

/** One lightness of the simplified picture, as the sheet is to have it. L* in, L* out. */
export function onTheSheet(range: ToneRange, lightness: number): number {
  const floored = Math.max(lightness, range.lo);
  return mapped(range, range.mode === 'opened' ? Math.min(floored, range.hi) : floored);
}

/**
 * Mean of `onTheSheet` over a set of pixels. Both mappings are straight once the lightness is
 * clamped, so the mean of the clamped lightness is enough and exact, whatever the paints.
 */
export function plannedLightness(range: ToneRange, tones: ToneMeans): number {
  return mapped(range, range.mode === 'opened' ? tones.clamped : tones.floored);
}

/** What a slot is to be on the sheet; bare paper where she keeps it white, whatever it is in the photo. */
export function targetOf(
  range: ToneRange,
  { lab, tones, byHand }: Pick<Slot, 'lab' | 'tones' | 'byHand'>,
): Pick<Slot, 'target' | 'reserve'> {
  if (byHand) return { target: [range.paper, 0, 0], reserve: true };
  const lightness = plannedLightness(range, tones);
  const reserve = range.paper - lightness <= reserveWithin;
  return { target: [lightness, lab[1], lab[2]], reserve };
}

/** The slots with targets and reserves for another range (other paints, other paper). */
export const retargeted = (slots: readonly Slot[], range: ToneRange): Slot[] =>
  slots.map((slot) => ({ ...slot, ...targetOf(range, slot) }));

/** How much of the sheet stays white, in how many shapes, how many of them too small to paint round. */
export function reservesOf(slots: readonly Slot[]): ReserveSummary {
  const kept = slots.filter((slot) => slot.reserve);
  const sum = (pick: (slot: Slot) => number): number =>
    kept.reduce((all, slot) => all + pick(slot), 0);
  return {
    share: sum((slot) => slot.share),
    count: sum((slot) => slot.shapes),
    smallCount: sum((slot) => slot.smallShapes),
  };
}
