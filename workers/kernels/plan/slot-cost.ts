import type { Lab } from '../../../app/model/lab.ts';
import { differenceOf } from '../optics/colour-difference.ts';

/** Values first: an L* of error counts this much on top of its part in CIEDE2000 (own figure). */
const lightnessWeight = 0.6;

/** How badly a colour misses its target: CIEDE2000 and, once more, the difference in lightness. */
export function slotCost(target: Lab, lightness: number, a: number, b: number): number {
  const d = differenceOf(target[0], target[1], target[2], lightness, a, b);
  return d + lightnessWeight * Math.abs(lightness - target[0]);
}
