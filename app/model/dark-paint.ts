import { isOwned, type OwnBox } from './own-box.ts';
import { isWhiteOrBlack, type PaintCard } from './paint.ts';

const darkestOf = ({ ladder }: PaintCard): number =>
  Math.min(...ladder.map(([lightness]) => lightness));

/** The paint of her box that gets darkest by itself, no white or black; of all known where she owns none such. */
export function darkPaint(cards: readonly PaintCard[], box: OwnBox): PaintCard | null {
  const coloured = cards.filter(({ ci }) => !isWhiteOrBlack(ci));
  const owned = coloured.filter(({ id }) => isOwned(box, id));
  return (owned.length > 0 ? owned : coloured).reduce<PaintCard | null>(
    (best, card) => (best && darkestOf(best) <= darkestOf(card) ? best : card),
    null,
  );
}
