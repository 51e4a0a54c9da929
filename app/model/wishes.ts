import type { Decision } from './painting.ts';
import type { ReadingWishes } from './reading.ts';
import type { PlanWishes } from './wash-plan.ts';

export interface PaletteWish {
  /** At most this many paints. */
  readonly n: number;
  readonly must: readonly string[];
  readonly exclude: readonly string[];
}

const usualPalette: PaletteWish = { n: 5, must: [], exclude: [] };

type Kind = Decision['kind'];

/** The last decision of a kind that was not taken back. */
function last<K extends Kind>(
  decisions: readonly Decision[],
  kind: K,
): Extract<Decision, { kind: K }> | undefined {
  const undone = new Set(decisions.map((decision) => decision.undoes));
  return decisions.findLast(
    (decision): decision is Extract<Decision, { kind: K }> =>
      decision.kind === kind && !undone.has(decision.id),
  );
}

/** What she decided about the reading; the rest is proposed. */
export function readingWishes(decisions: readonly Decision[]): ReadingWishes {
  const bands = last(decisions, 'bands');
  const range = last(decisions, 'range');
  return { ...(bands && { bands: bands.count }), ...(range && { range: range.mode }) };
}

export const paletteWish = (decisions: readonly Decision[]): PaletteWish =>
  last(decisions, 'palette') ?? usualPalette;

/** What she decided about paints and plan. */
export function planWishes(decisions: readonly Decision[]): PlanWishes {
  const { n, must, exclude } = paletteWish(decisions);
  return { paletteSize: n, must, exclude };
}
