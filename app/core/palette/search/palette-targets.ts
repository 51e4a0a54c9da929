import type { Lab } from '../../colour/lab.ts';
import { defaultPaperLab } from '../../paint/colour-of-washes.ts';
import type { Slot } from '../../reading/slot.ts';

/** A colour the palette is to reach, and how much of the painted area wants it. */
export interface PaletteTarget {
  readonly lab: Lab;
  /** Shares of the painted area; they sum to 1. */
  readonly weight: number;
  readonly band: number;
  readonly family: number;
}

/** a* and b* by which nobody hits a colour, nor reads it twice alike from copies of one photo (own). */
const unsure = 2;
const around: readonly (readonly [a: number, b: number])[] = [
  [unsure, 0],
  [-unsure, 0],
  [0, unsure],
  [0, -unsure],
];

/**
 * L* below the paper for each unit of chroma: no wash is as light as the paper and coloured (own; by the optics table
 * a pale lemon yellow loses 0.03, earths 0.18, cobalt blue 0.5).
 */
const darkerByChroma = 0.15;

/** What the most colourful tenth of a slot counts for: it is seen first (own). */
const vividWeight = 0.35;

/**
 * The painted slots as targets, each as its most colourful part and as four colours about it: a palette is to have what lies there, not the one mix
 * that happens to match. Reserves need no paint.
 */
export function paletteTargets(slots: readonly Slot[]): PaletteTarget[] {
  const painted = slots.filter((slot) => !slot.reserve && slot.share > 0);
  const whole = painted.reduce((all, slot) => all + slot.share, 0);
  return painted.flatMap(({ lab, vivid, target: [lightness, a, b], share, band, family }) => {
    const aim = ([l, u, v]: Lab, weight: number): PaletteTarget => {
      const most = defaultPaperLab[0] - darkerByChroma * Math.hypot(u, v);
      return { lab: [Math.min(l, most), u, v], weight: (weight * share) / whole, band, family };
    };
    const plain = vivid ? 1 - vividWeight : 1;
    const targets = around.map(([da, db]) =>
      aim([lightness, a + da, b + db], plain / around.length),
    );
    if (vivid) {
      const moved: Lab = [
        lightness + vivid[0] - lab[0],
        a + vivid[1] - lab[1],
        b + vivid[2] - lab[2],
      ];
      targets.push(aim(moved, vividWeight));
    }
    return targets;
  });
}

/** Planned L* of the darkest painted band, by area; 100 where nothing is painted. */
export function darkestBandLightness(targets: readonly PaletteTarget[]): number {
  const last = targets.reduce((most, target) => Math.max(most, target.band), 0);
  const darks = targets.filter((target) => target.band === last);
  const area = darks.reduce((all, target) => all + target.weight, 0);
  if (area === 0) return 100;
  return darks.reduce((all, target) => all + target.weight * target.lab[0], 0) / area;
}
