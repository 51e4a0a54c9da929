import type { PaletteWish } from './wishes.ts';

/** Most paints a palette has. */
export const mostPaints = 7;

const without = (list: readonly string[], id: string): string[] =>
  list.filter((other) => other !== id);
const including = (list: readonly string[], id: string): string[] => [...without(list, id), id];

/** Searched among all that is allowed. */
export const searchedFreely = ({ n, must, exclude }: PaletteWish): PaletteWish => ({
  n,
  must,
  exclude,
});

/** Exactly these paints. */
export const justThese = (wish: PaletteWish, ids: readonly string[]): PaletteWish => ({
  ...searchedFreely(wish),
  chosen: ids,
});

/** At most so many paints, searched anew. */
export const ofSize = (wish: PaletteWish, n: number): PaletteWish => ({
  ...searchedFreely(wish),
  n: Math.min(mostPaints, Math.max(1, wish.must.length, n)),
});

/** Whether one paint more can be asked for. */
export const hasRoom = ({ n, must, chosen }: PaletteWish): boolean =>
  chosen ? chosen.length < mostPaints : must.length < n;

/** With a paint that has to be in it: added to those chosen, or asked of the search. */
export function withPaint(wish: PaletteWish, id: string): PaletteWish {
  const exclude = without(wish.exclude, id);
  if (wish.chosen) return { ...wish, exclude, chosen: including(wish.chosen, id) };
  return { ...wish, exclude, must: including(wish.must, id) };
}

/** Without a paint: taken from those chosen, or never to be searched for. */
export function withoutPaint(wish: PaletteWish, id: string): PaletteWish {
  if (wish.chosen) {
    const left = without(wish.chosen, id);
    return left.length > 0
      ? { ...wish, chosen: left, must: without(wish.must, id) }
      : withoutPaint(searchedFreely(wish), id);
  }
  return { ...wish, must: without(wish.must, id), exclude: including(wish.exclude, id) };
}

/** The search may use it again, or need not any more. */
export const letBe = (wish: PaletteWish, id: string): PaletteWish => ({
  ...wish,
  must: without(wish.must, id),
  exclude: without(wish.exclude, id),
});
