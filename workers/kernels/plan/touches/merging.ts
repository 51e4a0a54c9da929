import { mergedWhere } from '../lose-where.ts';
import { washEdges } from '../wash-edges.ts';
import type { CallFor } from './called.ts';
import { fittedNames } from './fitted-names.ts';
import { gradingsOf } from './graded-wash.ts';
import { slotAt } from './wash-in-hand.ts';
import { whileItShines } from './windows.ts';

/** A lost edge inside a wash: both sides are painted in one go. */
export const merging: CallFor = (wash) => {
  const { facts, draft } = wash;
  if (draft.technique === 'dry brush') return null;
  const graded = gradingsOf(wash).map((one) => one.slots);
  const decided = washEdges(facts, draft.slots);
  const { pairs, hers, slots } = mergedWhere(facts, draft.slots, decided, graded);
  if (pairs.length === 0) return null;
  return {
    share: [...new Set(slots)].reduce((sum, i) => sum + slotAt(wash, i).share, 0),
    hers: hers > 0,
    touch: {
      technique: 'merging',
      text: fittedNames(
        (names) => `Lose the edge: paint in one go where they meet ${names}.`,
        pairs,
        '; ',
        Math.max(1, hers),
      ),
      paper: 'shiny',
      minutes: whileItShines(draft),
    },
  };
};
