import type { PixelSize } from '../../../app/model/reference.ts';
import { PlaneFit } from './plane-fit.ts';

/** A value that runs evenly over the picture: at the left top, and what it gains a px to the right and down. */
export interface PlainWash {
  readonly start: number;
  readonly across: number;
  readonly down: number;
}

/** About so many pixels are looked at. */
const samples = 20_000;
const rounds = 8;
/** Farther from the wash than this a pixel counts less, L* or the same of a*, b*. */
const near = 4;
/** Over the whole picture a plain wash gains at most so much: one Munsell value. */
const largestGain = 10;

/**
 * The wash nearest to a plane's values where `mask` is 0, by robust least squares (Huber, 'Robust
 * Estimation of a Location Parameter', 1964): a few leaves or lights in the ground don't pull it.
 */
export function plainWash(
  plane: Float32Array,
  mask: Uint8Array,
  { width, height }: PixelSize,
): PlainWash {
  const step = Math.max(1, Math.round(Math.sqrt((width * height) / samples)));
  let fit = new PlaneFit();
  for (let round = 0; round < rounds; round++) {
    const next = new PlaneFit();
    for (let y = step >> 1; y < height; y += step) {
      for (let x = step >> 1; x < width; x += step) {
        const i = y * width + x;
        if (mask[i] !== 0) continue;
        const value = plane[i] as number;
        const [right, low] = [x / width, y / height];
        const off = round === 0 ? 0 : Math.abs(value - fit.at(right, low));
        next.add(right, low, value, off <= near ? 1 : near / off);
      }
    }
    next.solve();
    fit = next;
  }
  const { level, middle, across, down } = fit;
  const gain = Math.abs(across) + Math.abs(down);
  const held = gain > largestGain ? largestGain / gain : 1;
  return {
    start: level - held * (across * middle[0] + down * middle[1]),
    across: (held * across) / width,
    down: (held * down) / height,
  };
}
