import { colourDifference } from '../../colour/ciede2000.ts';
import type { Lab } from '../../colour/lab.ts';
import { valueReachedWithin } from '../../limits.ts';
import type { Slot } from '../../reading/slot.ts';

/** How near the last expected sheet comes to what was planned, over the painted area. */
interface PlanQuality {
  /** Area-weighted mean of |dL*|. */
  readonly lightness: number;
  /** Share of the painted area that has its value (within 5 L*), 0..1. */
  readonly within5: number;
  /** Area-weighted mean CIEDE2000. */
  readonly colour: number;
  /** Largest |dL*| of any painted slot. */
  readonly worst: number;
}

/** Compares the last expected colour of every painted slot with its target. */
export function planQuality(slots: readonly Slot[], last: readonly Lab[]): PlanQuality {
  let area = 0;
  let lightness = 0;
  let within = 0;
  let colour = 0;
  let worst = 0;
  for (const [i, slot] of slots.entries()) {
    const got = last[i];
    if (slot.reserve || !got) continue;
    const gap = Math.abs(got[0] - slot.target[0]);
    area += slot.share;
    lightness += slot.share * gap;
    if (gap <= valueReachedWithin) within += slot.share;
    colour += slot.share * colourDifference(slot.target, got);
    worst = Math.max(worst, gap);
  }
  if (area === 0) return { lightness: 0, within5: 1, colour: 0, worst: 0 };
  return { lightness: lightness / area, within5: within / area, colour: colour / area, worst };
}
