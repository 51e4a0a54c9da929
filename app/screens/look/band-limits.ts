import type { Band } from '../../core/reading/reading.ts';

/** Two limits never come nearer than this, nor nearer to black or white, L* (own). */
const leastBetweenLimits = 2;

/** The limits between bands, L*, from dark to light; one fewer than there are bands. */
export const limitsOf = (bands: readonly Band[]): number[] =>
  bands
    .slice(0, -1)
    .map(({ from }) => from)
    .reverse();

/** How far a limit may be moved: up to its neighbours. L*. */
export function roomOfLimit(limits: readonly number[], which: number): readonly [number, number] {
  const below = limits[which - 1] ?? 0;
  const above = limits[which + 1] ?? 100;
  return [below + leastBetweenLimits, above - leastBetweenLimits];
}

/** The limits with one of them moved to a lightness, held between its neighbours. */
export function moveLimit(limits: readonly number[], which: number, to: number): number[] {
  const [low, high] = roomOfLimit(limits, which);
  const held = Math.max(low, Math.min(high, to)); // where there is no room, the lower end
  return limits.map((limit, i) => (i === which ? held : limit));
}

/** Which limit lies nearest to a lightness: the one a finger there means. -1 where there is none. */
export function nearestLimit(limits: readonly number[], lightness: number): number {
  const away = limits.map((limit) => Math.abs(limit - lightness));
  return away.indexOf(Math.min(...away));
}

interface BandAtOnce {
  readonly band: number;
  readonly from: number;
  readonly to: number;
  /** Mean simplified lightness, L*; the middle where no pixel falls between the limits. */
  readonly lightness: number;
}

/**
 * The bands that limits (L*, from dark to light) make of a histogram of 256 bins, bin = L* x 2.55, the
 * lightest first: what she sees while she drags, before shapes are joined.
 */
export function bandsByLimits(
  histogram: readonly number[],
  limits: readonly number[],
): BandAtOnce[] {
  const ends = [0, ...limits, 100];
  const bands = ends.slice(1).map((to, i): BandAtOnce => {
    const from = ends[i] as number;
    let count = 0;
    let sum = 0;
    histogram.forEach((pixels, bin) => {
      const lightness = bin / 2.55;
      const above = i === 0 || lightness >= from;
      if (!above || (lightness >= to && i < limits.length)) return;
      count += pixels;
      sum += pixels * lightness;
    });
    return {
      band: limits.length + 1 - i,
      from,
      to,
      lightness: count ? sum / count : (from + to) / 2,
    };
  });
  return bands.reverse();
}
