import type { Paint } from '../../../app/model/paint.ts';
import { type FoundSet, setsUpTo } from './best-sets.ts';
import type { Checkpoint } from './checkpoint.ts';
import { isDifferent } from './is-different.ts';
import { type PaletteSearch, paintsOf } from './open-search.ts';
import { againstPaints, granulationOf } from './preference.ts';

/** Rated per set of paints: less is more of the character. */
export const characterRatings = {
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

/** By how much a set has to be more of the character than the palette in use to be offered for it (own figures). */
const leastGain: Readonly<Record<SearchedCharacter, number>> = {
  fewest: 1,
  cleanest: 1,
  granulating: 0.25,
};

/**
 * Among the sets that cost at most `atMost` the one with most of a character, the cheaper of equal ones; it is
 * different from all of `seen`, and clearly more of the character than the first of them. Null without one.
 */
export async function setOfCharacter(
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
      if (!seen.every((one) => isDifferent(own, one))) return;
      best = set;
      rating = rated;
    },
    checkpoint,
  );
  return best;
}
