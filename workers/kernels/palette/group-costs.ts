import { differenceOf } from '../optics/colour-difference.ts';
import { labSteps, type MixGroup } from './mix-library.ts';
import { NearDifference } from './near-difference.ts';
import type { PaletteTarget } from './palette-target.ts';

/** Added for every paint of a mix beyond the first (own figure, design). */
export const perMixedPaint = 0.4;

/** S_L of CIEDE2000 for a mean lightness this far from 50; rises with it, 1.747 at most. */
function weightOfLightness(fromMid: number): number {
  const squared = fromMid * fromMid;
  return 1 + (0.015 * squared) / Math.sqrt(20 + squared);
}

/** A mix further in L* than this is at least `best` away. (Either way the mean is within half of it.) */
function widestGap(lightness: number, best: number): number {
  if (best > 50) return 100;
  return best * weightOfLightness(Math.abs(lightness - 50) + 0.875 * best);
}

/** A colour to reach, with what makes the search for it quick. */
export interface SoughtColour {
  readonly target: PaletteTarget;
  readonly near: NearDifference;
}

export const soughtColour = (target: PaletteTarget): SoughtColour => ({
  target,
  near: new NearDifference(target.lab),
});

// Read once, for the loop.
const perUnit = 1 / labSteps;
const difference = differenceOf;

/**
 * Least CIEDE2000 of this group's mixes to each colour, plus 0.4 per paint beyond the first, where that
 * is less than `limits`; Infinity where it is not. Written to out[at ..]. A mix is passed over only
 * where its lightness or the simplified difference rules it out. (CIEDE2000 is never under |dL*| /
 * S_L: what is left of the formula is a sum that cannot be negative, as |R_T| < 2.)
 */
export function writeGroupCosts(
  group: MixGroup,
  sought: readonly SoughtColour[],
  limits: Float64Array,
  out: Float32Array,
  at: number,
): void {
  const { lightness, chroma, members } = group;
  const extra = perMixedPaint * (members.length - 1);
  for (let t = 0; t < sought.length; t++) {
    const { target, near } = sought[t] as SoughtColour;
    const [l, a, b] = target.lab;
    const limit = (limits[t] as number) - extra;
    let best = limit;
    const middle = Math.round(l * labSteps);
    let gap = widestGap(l, best) * labSteps + 1;
    for (let i = 0; i < lightness.length; i++) {
      const own = lightness[i] as number;
      if (own - middle > gap || middle - own > gap) continue;
      const u = (chroma[2 * i] as number) * perUnit;
      const v = (chroma[2 * i + 1] as number) * perUnit;
      if (!near.isWithin(best * best, own * perUnit, u, v)) continue;
      const found = difference(l, a, b, own * perUnit, u, v);
      if (found >= best) continue;
      best = found;
      gap = widestGap(l, best) * labSteps + 1;
    }
    out[at + t] = best < limit ? best + extra : Number.POSITIVE_INFINITY;
  }
}
