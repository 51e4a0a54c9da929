import type { Band } from './reading.ts';

/** Two limits never come nearer than this, nor nearer to black or white, L*. Own limit. */
export const leastBetweenLimits = 2;

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
export function movedLimit(limits: readonly number[], which: number, to: number): number[] {
  const [low, high] = roomOfLimit(limits, which);
  const held = Math.max(low, Math.min(high, to)); // where there is no room, the lower end
  return limits.map((limit, i) => (i === which ? held : limit));
}

/** Which limit lies nearest to a lightness: the one a finger there means. -1 where there is none. */
export function nearestLimit(limits: readonly number[], lightness: number): number {
  const away = limits.map((limit) => Math.abs(limit - lightness));
  return away.indexOf(Math.min(...away));
}
