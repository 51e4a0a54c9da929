import type { PlanWishes } from '../decisions/plan-wishes.ts';
import { largestPalette, proposedPaletteSize } from '../limits.ts';
import { isWhiteOrBlack, type Paint } from '../paint/paint.ts';
import { placeAmongOwned } from '../paint/paint-box.ts';
import {
  noPaintLeft,
  noSuchPaint,
  noSuchSize,
  tooManyChosen,
  tooManyWanted,
  wantedAndLeftOut,
} from '../words/faults.ts';

/** What may be chosen from, and what has to be in. */
interface PaintsAllowed {
  readonly paints: readonly Paint[];
  readonly must: readonly Paint[];
  readonly size: number;
  /** Exactly `must`: nothing to search. */
  readonly fixed: boolean;
}

/** What she has until she says: her own paints, and the built-in ones most boxes hold. */
const isLikelyOwned = ({ id, provenance }: Paint): boolean =>
  provenance === undefined || placeAmongOwned(id) >= 0;

/** Hers among all paints known: those of her box, or what counts as hers until she has ticked any. */
export const ownedAmong = (known: readonly Paint[], box?: readonly string[]): readonly Paint[] =>
  known.filter((paint) => (box ? box.includes(paint.id) : isLikelyOwned(paint)));

/**
 * Which paints her wishes leave, from all paints known. Whites and blacks stay out unless they are among
 * `must` or `chosen`. Throws RangeError with a sentence for her where the wishes contradict each other.
 */
export function paintsAllowed(known: readonly Paint[], wishes: PlanWishes): PaintsAllowed {
  const find = (id: string): Paint => {
    const paint = known.find((each) => each.id === id);
    if (!paint) throw new RangeError(noSuchPaint(id));
    return paint;
  };
  const unique = (ids: readonly string[] | undefined): Paint[] => [...new Set(ids ?? [])].map(find);
  const size = wishes.paletteSize ?? proposedPaletteSize;
  if (!Number.isInteger(size) || size < 1 || size > largestPalette) {
    throw new RangeError(noSuchSize);
  }
  if (wishes.chosen && wishes.chosen.length > 0) {
    const chosen = unique(wishes.chosen);
    if (chosen.length > largestPalette) {
      throw new RangeError(tooManyChosen);
    }
    return { paints: chosen, must: chosen, size: chosen.length, fixed: true };
  }
  const must = unique(wishes.must);
  const excluded = new Set(unique(wishes.exclude));
  for (const paint of must) {
    if (excluded.has(paint)) {
      throw new RangeError(wantedAndLeftOut(paint.name));
    }
  }
  if (must.length > size) {
    throw new RangeError(tooManyWanted(must.length, size));
  }
  const owned = wishes.box ? unique(wishes.box) : known.filter(isLikelyOwned);
  const free = owned.filter(
    (paint) => !excluded.has(paint) && !isWhiteOrBlack(paint.ci) && !must.includes(paint),
  );
  const paints = known.filter((paint) => free.includes(paint) || must.includes(paint));
  if (paints.length === 0) {
    throw new RangeError(noPaintLeft);
  }
  return { paints, must, size: Math.min(size, paints.length), fixed: false };
}
