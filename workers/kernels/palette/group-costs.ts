import { differenceOf } from '../optics/colour-difference.ts';
import type { MixGroup } from './mix-library.ts';
import type { PaletteTarget } from './palette-target.ts';

/** Added for every paint of a mix beyond the first (own figure, design). */
export const perMixedPaint = 0.4;

/**
 * For each target the least CIEDE2000 of this group's mixes to it, plus 0.4 per paint beyond the
 * first. Exact: a mix is passed over only where lightness alone rules it out. (CIEDE2000 is never
 * under |dL*| / S_L: what is left of the formula is a sum that cannot be negative, as |R_T| < 2.)
 */
export function groupCosts(group: MixGroup, targets: readonly PaletteTarget[]): Float32Array {
  const { lab } = group;
  const costs = new Float32Array(targets.length);
  for (const [n, target] of targets.entries()) {
    const [lightness, a, b] = target.lab;
    let best = Number.POSITIVE_INFINITY;
    for (let i = 0; i < lab.length; i += 3) {
      const l = lab[i] as number;
      const gap = Math.abs(l - lightness);
      if (gap > best * 1.75) continue; // S_L is at most 1.747
      const fromMid = ((l + lightness) / 2 - 50) ** 2;
      if (gap > best * (1 + (0.015 * fromMid) / Math.sqrt(20 + fromMid))) continue;
      const d = differenceOf(lightness, a, b, l, lab[i + 1] as number, lab[i + 2] as number);
      if (d < best) best = d;
    }
    costs[n] = best + perMixedPaint * (group.members.length - 1);
  }
  return costs;
}
