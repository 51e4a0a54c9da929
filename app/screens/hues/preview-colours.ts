import type { ColourWish } from '../../model/colour-wish.ts';
import type { Lab } from '../../model/lab.ts';
import type { PaintCard } from '../../model/paint.ts';
import type { Reading } from '../../model/reading.ts';
import { inWishedColours, paintOfFamilies } from '../../model/wished-colours.ts';

/** Colour of every slot on the sheet in the hues she wants, by the ladders of her paints; whites are paper. */
export function previewColours(
  { slots, families, range }: Pick<Reading, 'slots' | 'families' | 'range'>,
  wish: ColourWish,
  cards: readonly PaintCard[],
): Lab[] {
  const paper: Lab = [range.paper, 0, 0];
  const colours = inWishedColours(
    slots.map(({ family, target }) => ({ family, colour: target })),
    paintOfFamilies(wish, families),
    (paint) => {
      const card = cards.find(({ id }) => id === paint);
      return card && [paper, ...card.ladder];
    },
  );
  return colours.map((colour, i) => (slots[i]?.reserve ? paper : colour));
}
