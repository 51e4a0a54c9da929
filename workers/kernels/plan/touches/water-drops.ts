import type { CallFor } from './called.ts';
import { fittedNames } from './fitted-names.ts';
import { texturedPlaces } from './textured-places.ts';
import { asTheShineGoes } from './windows.ts';

/** Own figures: soft along a good part of the way, enough of it on the sheet, a shine that can be watched. */
const dropped = { soft: 0.4, share: 0.03, shineMinutes: 2 } as const;

/**
 * Drops of water, as the shine is about to go, win back soft lights in a textured ground (R13); never in a
 * plain area (R21), never over a subject.
 */
export const waterDrops: CallFor = (wash) => {
  const { draft, passage } = wash;
  if (passage === 'subject' || draft.technique === 'glaze' || draft.technique === 'dry brush') {
    return null;
  }
  if (draft.shineMinutes[1] < dropped.shineMinutes) return null;
  const places = texturedPlaces(wash, dropped.share, (soft) => soft >= dropped.soft);
  if (!places) return null;
  return {
    share: places.share,
    touch: {
      technique: 'water drops',
      text: fittedNames(
        (shapes) =>
          `As the shine is about to go, flick a few drops of clean water on ${shapes}: they open soft lights. Cover the rest.`,
        places.names,
        ' and ',
      ),
      paper: 'satin',
      minutes: asTheShineGoes(draft),
    },
  };
};
