import type { ColourWish } from '../../../app/model/colour-wish.ts';
import type { Lab } from '../../../app/model/lab.ts';
import type { Paint } from '../../../app/model/paint.ts';
import type { Family } from '../../../app/model/reading.ts';
import type { Slot } from '../../../app/model/slot.ts';
import { inWishedColours, paintOfFamilies } from '../../../app/model/wished-colours.ts';
import { colourOfWashes } from '../optics/colour-of-washes.ts';
import { defaultPaperLab } from '../optics/default-paper.ts';
import { lookLoads } from './puddle-option.ts';

/** The paper, then dry colours of one paint over it at loads 1/16 to 32 in half octaves. */
const ladderOf = (paint: Paint): Lab[] => [
  defaultPaperLab,
  ...lookLoads.map((load) => colourOfWashes([{ paints: [paint], parts: [1], load }])),
];

/**
 * Slots with targets in the colours she wants: a* and b* of the paint chosen for the family (or of the one
 * paint) at the target's own lightness; lightness and reserves stay. The very slots where nothing is wished.
 */
export function wishedColours(
  slots: readonly Slot[],
  families: readonly Family[],
  wish: ColourWish | undefined,
  known: readonly Paint[],
): readonly Slot[] {
  const paints = paintOfFamilies(wish, families);
  if (paints.size === 0) return slots;
  const ladders = new Map<string, Lab[]>();
  for (const id of new Set(paints.values())) {
    const paint = known.find((each) => each.id === id);
    if (paint) ladders.set(id, ladderOf(paint));
  }
  const colours = inWishedColours(
    slots.map(({ family, target }) => ({ family, colour: target })),
    paints,
    (paint) => ladders.get(paint),
  );
  return slots.map((slot, i) => (slot.reserve ? slot : { ...slot, target: colours[i] as Lab }));
}
