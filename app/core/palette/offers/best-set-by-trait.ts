import type { Paint } from '../../paint/paint.ts';
import type { Checkpoint } from '../checkpoint.ts';
import { setsUpTo } from '../search/branch-and-bound.ts';
import { againstPaints } from '../search/paint-price.ts';
import { type PaletteSearch, paintsOf } from '../search/search-palette.ts';
import type { FoundSet } from '../search/set-walk.ts';

/** How much paints granulate, 0..2 each, on average: 0 where nobody knows. */
export const granulationOf = (paints: readonly Paint[]): number =>
  paints.reduce((sum, { properties }) => sum + (properties.granulation ?? 0), 0) /
  Math.max(1, paints.length);

/**
 * Whether a set of paints is another palette than one she already has before her: smaller, or with at least two
 * paints that are not in it.
 */
export function isDistinctPalette<T>(set: readonly T[], from: readonly T[]): boolean {
  if (set.length < from.length) return true;
  let news = 0;
  for (const each of set) if (!from.includes(each)) news += 1;
  return news >= 2;
}

/** Ratings of a set of paints per character: a lower figure has more of the character. */
const characterRatings = {
  fewest: (paints: readonly Paint[]): number => paints.length,
  cleanest: againstPaints,
  granulating: (paints: readonly Paint[]): number => -granulationOf(paints),
} as const;

export type SearchedCharacter = keyof typeof characterRatings;

/** Paints it may have beyond those of the palette in use: none is offered that needs many more. */
const sizeMore: Readonly<Record<SearchedCharacter, number>> = {
  fewest: -1,
  cleanest: 1,
  granulating: 1,
};

/** Whether one palette is clearly more of a character than another. */
export const isMore = (
  character: SearchedCharacter,
  paints: readonly Paint[],
  than: readonly Paint[],
): boolean => {
  const rate = characterRatings[character];
  return rate(paints) <= rate(than) - leastGain[character];
};

/** By how much a set has to be more of the character than the palette in use to be offered for it (own). */
const leastGain: Readonly<Record<SearchedCharacter, number>> = {
  fewest: 1,
  cleanest: 0.22,
  granulating: 0.25,
};

/**
 * Among the sets that cost at most `atMost` the one with most of a character, the cheaper of equal ones; it is
 * different from all of `seen`, and clearly more of the character than the first of them. Null without one.
 */
export async function bestSetByTrait(
  character: SearchedCharacter,
  seen: readonly (readonly Paint[])[],
  atMost: number,
  search: PaletteSearch,
  checkpoint: Checkpoint,
): Promise<FoundSet | null> {
  const { tables, targets } = search;
  const rate = characterRatings[character];
  const room = (seen[0]?.length ?? 0) + sizeMore[character];
  const wishes = { ...search.wishes, size: Math.min(search.wishes.size, room) };
  if (wishes.size < Math.max(1, wishes.must.length)) return null;
  let best: FoundSet | null = null;
  let rating = rate(seen[0] ?? []) - leastGain[character];
  await setsUpTo(
    atMost,
    tables,
    targets,
    wishes,
    (set) => {
      const own = paintsOf(search, set);
      const rated = rate(own);
      if (rated > rating || (best && rated === rating && set.cost >= best.cost)) return;
      if (!seen.every((one) => isDistinctPalette(own, one))) return;
      best = set;
      rating = rated;
    },
    checkpoint,
  );
  return best;
}
