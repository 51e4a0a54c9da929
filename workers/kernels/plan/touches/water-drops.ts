import { longestNamed, sideOf } from '../side-words.ts';
import { isTextured } from '../textured-slot.ts';
import { wayRound } from './borders-of.ts';
import type { CallFor } from './called.ts';
import { fittedNames } from './fitted-names.ts';
import { slotAt } from './wash-in-hand.ts';
import { asTheShineGoes } from './windows.ts';

/** Own figures: soft along a good part of the way, enough of it on the sheet, a shine that can be watched. */
const dropped = { soft: 0.4, share: 0.03, shineMinutes: 2 } as const;

/**
 * Drops of water, as the shine is about to go, win back soft lights in a textured ground (R13); never in a
 * plain area (R21), never over a subject.
 */
export const waterDrops: CallFor = (wash) => {
  const { facts, draft, finished, sheetMm2, passage } = wash;
  if (passage === 'subject' || draft.technique === 'glaze' || draft.technique === 'dry brush') {
    return null;
  }
  if (draft.shineMinutes[1] < dropped.shineMinutes) return null;
  const places = [...finished].filter((i) => {
    const slot = slotAt(wash, i);
    return (
      slot.share >= dropped.share &&
      isTextured(slot, sheetMm2) &&
      wayRound(facts.reading.borders, i).soft >= dropped.soft
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
      technique: 'water drops',
      text: fittedNames(
        (shapes) =>
          `As the shine is about to go, flick a few drops of clean water on ${shapes}: they open soft lights. Cover the rest.`,
        names,
        ' and ',
      ),
      paper: 'satin',
      minutes: asTheShineGoes(draft),
    },
  };
};
