import type { ColourWish } from '../../model/colour-wish.ts';
import type { Lab } from '../../model/lab.ts';
import type { PaintCard } from '../../model/paint.ts';
import type { Reading } from '../../model/reading.ts';
import { retargeted, toneRange } from '../../model/tone-range.ts';
import { inWishedColours, paintOfFamilies } from '../../model/wished-colours.ts';

/**
 * Colour of every slot on the sheet in the hues she wants, by the ladders of her paints; whites are paper. With
 * one paint the range of values is its own, as the plan has it.
 */
export function previewColours(
  { slots: read, families, range }: Pick<Reading, 'slots' | 'families' | 'range'>,
  wish: ColourWish,
  cards: readonly PaintCard[],
): Lab[] {
  const paper: Lab = [range.paper, 0, 0];
  const only = wish.mode === 'one' && cards.find(({ id }) => id === wish.paint);
  const darkest = only && Math.min(...only.ladder.map(([lightness]) => lightness));
  const slots = darkest
    ? retargeted(read, toneRange(range.mode, range.lo, range.hi, darkest, range.paper))
    : read;
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
