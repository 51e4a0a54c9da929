import { longestNamed, sideOf } from '../side-words.ts';
import { isTextured } from '../textured-slot.ts';
import { wayRound } from './borders-of.ts';
import type { CallFor } from './called.ts';
import { fittedNames } from './fitted-names.ts';
import { slotAt } from './wash-in-hand.ts';

/** Own figures: crisp along most of the way, enough of it on the sheet. */
const broken = { soft: 0.4, share: 0.02 } as const;

/** Broken, crisp texture in a later wash is dragged on, not drawn shape by shape. */
export const dryBrush: CallFor = (wash) => {
  const { facts, draft, finished, sheetMm2 } = wash;
  if (wash.wash < 2 || draft.technique !== 'wet on dry') return null;
  const places = [...finished].filter((i) => {
    const slot = slotAt(wash, i);
    return (
      slot.share >= broken.share &&
      isTextured(slot, sheetMm2) &&
      wayRound(facts.reading.borders, i).soft < broken.soft
    );
  });
  if (places.length === 0) return null;
  const names = longestNamed(
    places.map((i) => [sideOf(facts, i), slotAt(wash, i).share]),
    2,
  );
  return {
    share: places.reduce((sum, i) => sum + slotAt(wash, i).share, 0),
    touch: {
      technique: 'dry brush',
      text: fittedNames(
        (shapes) =>
          `For the broken texture of ${shapes}, blot the loaded brush, hold it low and drag it: only the tops of the paper take paint.`,
        names,
        ' and ',
      ),
      paper: 'bone dry',
      minutes: null,
    },
  };
};
