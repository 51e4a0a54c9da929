import type { Lab } from '../../../app/model/lab.ts';
import type { Slot } from '../../../app/model/slot.ts';

/** Added to the cost of a set for every paint in it (own figure, design). */
export const perPaint = 0.3;

/** A colour the palette is to reach, and how much of the painted area wants it. */
export interface PaletteTarget {
  readonly lab: Lab;
  /** Shares of the painted area; they sum to 1. */
  readonly weight: number;
  readonly band: number;
  readonly family: number;
}

/** The painted slots as targets: reserves need no paint. */
export function paletteTargets(slots: readonly Slot[]): PaletteTarget[] {
  const painted = slots.filter((slot) => !slot.reserve && slot.share > 0);
  const whole = painted.reduce((all, slot) => all + slot.share, 0);
  return painted.map(({ target, share, band, family }) => ({
    lab: target,
    weight: share / whole,
    band,
    family,
  }));
}

/** Planned L* of the darkest painted band, by area; 100 where nothing is painted. */
export function darkestBandLightness(targets: readonly PaletteTarget[]): number {
  const last = targets.reduce((most, target) => Math.max(most, target.band), 0);
  const darks = targets.filter((target) => target.band === last);
  const area = darks.reduce((all, target) => all + target.weight, 0);
  if (area === 0) return 100;
  return darks.reduce((all, target) => all + target.weight * target.lab[0], 0) / area;
}
