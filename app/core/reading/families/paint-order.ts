import { mostBands } from '../../limits.ts';
import type { Family, Reading } from '../reading.ts';

/**
 * The colours of a picture in the order in which washes first need them: those of the lightest band first, as light
 * goes before dark; of several the one that covers more. Every wash needs a colour from its own lightest band on.
 */
export function familiesAsPainted({
  families,
  slots,
}: Pick<Reading, 'families' | 'slots'>): Family[] {
  const first = (id: number): number =>
    slots.reduce(
      (least, { family, band }) => (family === id && band > 0 ? Math.min(least, band) : least),
      mostBands + 1, // in whites by her brush only: not painted at all
    );
  return [...families].sort(
    (one, other) => first(one.id) - first(other.id) || other.share - one.share,
  );
}
