import { lightnessOfOneValue, reserveChroma, reserveWithin } from '../limits.ts';
import type { RangeMode, ToneRange } from './reading.ts';
import type { ReserveSummary, Slot } from './slot.ts';

/**
 * What is darker than paint reaches is pressed together with as much above it: so many times the way from the
 * picture's darkest to the paint's (own; 1.2 to 2.2 come equally near to six photographs, 1.2 nearest in value).
 */
const pressedTimes = 1.2;

/** A picture of a narrower span than this, L*, may be opened up (own). */
export const openableSpan = 4.5 * lightnessOfOneValue;

/**
 * How the reference's lightness is brought into what the sheet can do. `lo` and `hi` are the 1st and 99th percentile
 * of simplified lightness, `darkest` the darkest the paints reach, `paper` the paper; all L*. What paint reaches is
 * kept; opened up, the lights are spread up to the paper.
 */
export function toneRange(
  mode: RangeMode,
  lo: number,
  hi: number,
  darkest: number,
  paper: number,
): ToneRange {
  const knee = lo < darkest ? Math.min(paper, lo + pressedTimes * (darkest - lo)) : lo;
  return { mode, lo, hi, dark: Math.max(lo, darkest), paper, darkest, knee };
}

/** The same picture and paints in the other, or the same, way. */
export const rangeIn = (mode: RangeMode, { lo, hi, dark, darkest, paper }: ToneRange): ToneRange =>
  toneRange(mode, lo, hi, darkest ?? dark, paper);

export const canOpenUp = ({ lo, hi }: Pick<ToneRange, 'lo' | 'hi'>): boolean =>
  hi - lo < openableSpan;

/** As plans were made before there was a knee: one straight line from dark to paper. */
function onStraightLine({ mode, lo, hi, dark, paper }: ToneRange, lightness: number): number {
  const top = mode === 'opened' ? hi : 100;
  if (top <= lo) return lightness >= 50 ? paper : dark; // a single tone
  const part = (Math.min(top, Math.max(lo, lightness)) - lo) / (top - lo);
  return dark + part * (paper - dark);
}

/** One lightness of the simplified picture, as the sheet is to have it. L* in, L* out. */
export function onTheSheet(range: ToneRange, lightness: number): number {
  const { mode, lo, hi, dark, paper, knee } = range;
  if (knee === undefined) return onStraightLine(range, lightness);
  const pressed =
    lightness < knee && knee > lo
      ? Math.max(dark, knee - ((knee - lightness) * (knee - dark)) / (knee - lo))
      : lightness;
  const opened = mode === 'opened' && hi > lo && hi < paper;
  const spread = opened ? (paper - hi) * Math.max(0, (lightness - lo) / (hi - lo)) : 0;
  return Math.min(paper, pressed + spread);
}

/** What a slot is to be on the sheet; bare paper where she keeps it white, whatever it is in the photo. */
export function targetOf(
  range: ToneRange,
  { lab, byHand }: Pick<Slot, 'lab' | 'byHand'>,
): Pick<Slot, 'target' | 'reserve'> {
  if (byHand) return { target: [range.paper, 0, 0], reserve: true };
  const lightness = onTheSheet(range, lab[0]);
  const [, a, b] = lab;
  const reserve = range.paper - lightness <= reserveWithin && Math.hypot(a, b) < reserveChroma;
  return { target: [lightness, a, b], reserve };
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
