import { type OwnBox, ownPaints, tickedPaints } from './own-box.ts';
import type { PlanWishes } from './plan-wishes.ts';

/** What the search for a palette may choose from. */
export type BoxWishes = Pick<PlanWishes, 'box' | 'ownPaints'>;

export function boxWishes(box: OwnBox): BoxWishes {
  const own = ownPaints(box);
  const ticked = tickedPaints(box);
  return {
    ...(ticked && { box: ticked }),
    ...(own.length > 0 && { ownPaints: own }),
  };
}
