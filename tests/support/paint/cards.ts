import type { Paint, PaintCard } from '../../../app/core/paint/paint.ts';
import { paintBox, paintCard } from '../../../app/core/paint/paint-box.ts';

/** The built-in paints as the page gets them. */
export const cards: readonly PaintCard[] = paintBox.map(paintCard);

export function card(id: string): PaintCard {
  const found = cards.find((each) => each.id === id);
  if (!found) throw new TypeError(`No paint ${id}`);
  return found;
}

export function builtIn(id: string): Paint {
  const found = paintBox.find((each) => each.id === id);
  if (!found) throw new TypeError(`No paint ${id}`);
  return found;
}
