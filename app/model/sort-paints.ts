import { hueOf } from './hue-group.ts';
import type { PaintCard } from './paint.ts';
import { valueSpan } from './value-span.ts';

export type PaintOrder = 'hue' | 'dark' | 'name';

/** Greenish yellow first, through red, violet, blue to green, as paints are laid out; greys last. */
function hueKey(card: PaintCard): number {
  const { angle, chroma } = hueOf(card);
  return chroma < 10 ? 1000 - (card.ladder[2]?.[0] ?? 0) : (120 - angle + 360) % 360;
}

const compare: Record<PaintOrder, (one: PaintCard, other: PaintCard) => number> = {
  hue: (one, other) => hueKey(one) - hueKey(other),
  dark: (one, other) => valueSpan(one.ladder).darkest - valueSpan(other.ladder).darkest,
  name: (one, other) => one.name.localeCompare(other.name, 'en', { sensitivity: 'base' }),
};

/** Cards in an order; equals by name. */
export const sortPaints = (cards: readonly PaintCard[], by: PaintOrder): PaintCard[] =>
  [...cards].sort((one, other) => compare[by](one, other) || compare.name(one, other));
