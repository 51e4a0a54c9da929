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

/**
 * Which of some places along the strip, in order, lies nearest to a finger: the one it means. Of several in one place
 * the one that can be taken to the finger's side. -1 where there is none.
 */
export function nearestPlace(places: readonly number[], finger: number): number {
  const away = places.map((place) => Math.abs(place - finger));
  const least = Math.min(...away);
  const nearest = away.indexOf(least);
  return finger > (places[nearest] ?? finger) ? away.lastIndexOf(least) : nearest;
}

/** Where bin i of a histogram begins, counted in bins from black: L* x 2.55 = i - 1/2. */
const binsBelow = (lightness: number): number => lightness * 2.55 + 0.5;

/**
 * Share of the picture, 0..1, darker than a lightness (L*): where it lies along a strip whose steps are as wide as
 * their share. Inside one bin of the histogram (256, bin = L* x 2.55) it rises evenly.
 */
export function shareBelow(histogram: readonly number[], lightness: number): number {
  const reached = binsBelow(lightness);
  let [below, all] = [0, 0];
  histogram.forEach((pixels, bin) => {
    all += pixels;
    below += pixels * Math.max(0, Math.min(1, reached - bin));
  });
  return all ? below / all : 0;
}

/**
 * The way back: the lightness (L*) with that share of the picture below it. Where no pixel is for a stretch of the
 * scale, its middle, as limits lie in gaps; 0 and 100 at the ends.
 */
export function lightnessAtShare(histogram: readonly number[], share: number): number {
  const all = histogram.reduce((sum, pixels) => sum + pixels, 0);
  if (share <= 0 || all === 0) return 0;
  if (share >= 1) return 100;
  const wanted = share * all;
  let below = 0;
  for (const [bin, pixels] of histogram.entries()) {
    const next = below + pixels;
    if (next > wanted) return (bin + (wanted - below) / pixels - 0.5) / 2.55;
    if (pixels > 0 && next === wanted) {
      const gap = histogram.findIndex((more, i) => i > bin && more > 0);
      return ((bin + 1 + gap) / 2 - 0.5) / 2.55;
    }
    below = next;
  }
  return 100;
}

interface BandAtOnce {
  readonly band: number;
  readonly from: number;
  readonly to: number;
  /** Mean simplified lightness, L*; the middle where no pixel falls between the limits. */
  readonly lightness: number;
  /** Share of the picture, 0..1. */
  readonly share: number;
}

/**
 * The bands that limits (L*, from dark to light) make of a histogram of 256 bins, bin = L* x 2.55, the
 * lightest first: what she sees while she drags, before shapes are joined.
 */
export function bandsByLimits(
  histogram: readonly number[],
  limits: readonly number[],
): BandAtOnce[] {
  const all = histogram.reduce((total, pixels) => total + pixels, 0);
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
      share: all ? count / all : 0,
    };
  });
  return bands.reverse();
}
