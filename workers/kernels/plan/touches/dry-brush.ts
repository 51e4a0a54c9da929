import type { CallFor } from './called.ts';
import { fittedNames } from './fitted-names.ts';
import { texturedPlaces } from './textured-places.ts';

/** Own figures: crisp along most of the way, enough of it on the sheet. */
const broken = { soft: 0.4, share: 0.02 } as const;

/** Broken, crisp texture in a later wash is dragged on, not drawn shape by shape. */
export const dryBrush: CallFor = (wash) => {
  const { draft } = wash;
  if (wash.wash < 2 || draft.technique !== 'wet on dry') return null;
  const places = texturedPlaces(wash, broken.share, (soft) => soft < broken.soft);
  if (!places) return null;
  return {
    share: places.share,
    touch: {
      technique: 'dry brush',
      text: fittedNames(
        (shapes) =>
          `For the broken texture of ${shapes}, blot the loaded brush, hold it low and drag it: only the tops of the paper take paint.`,
        places.names,
        ' and ',
      ),
      paper: 'bone dry',
      minutes: null,
    },
  };
};
