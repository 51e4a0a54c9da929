import type { Slot } from '../../../app/model/slot.ts';
import type { WashBands } from './plan-facts.ts';

/** The bands of these slots that need paint, lightest first. */
export function paintedBands(slots: readonly Slot[]): number[] {
  const bands = new Set(slots.filter((slot) => !slot.reserve).map((slot) => slot.band));
  return [...bands].sort((a, b) => a - b);
}

/**
 * One wash a painted band, from light to dark; where there are more bands than washes the paper bears
 * (R9), the lightest adjoining ones share: one puddle, two strengths.
 */
export function washBands(bands: readonly number[], mostWashes: number): WashBands[] {
  const count = Math.min(bands.length, mostWashes);
  const sizes = new Array<number>(count).fill(1);
  for (let extra = bands.length - count, i = 0; extra > 0; extra--, i = (i + 1) % count) {
    sizes[i] = (sizes[i] as number) + 1;
  }
  let from = 0;
  return sizes.map((size, i) => {
    const group = bands.slice(from, from + size);
    from += size;
    const split = Math.floor(size / 2);
    return { wash: i + 1, weak: group.slice(0, split), full: group.slice(split) };
  });
}
