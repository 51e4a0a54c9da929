import type { Border, Reading } from '../../../app/model/reading.ts';

/** Borders between painted and not painted in one wash. */
export function outerBorders(
  reading: Pick<Reading, 'borders'>,
  slots: readonly number[],
): Border[] {
  const inside = new Set(slots);
  return reading.borders.filter((border) => inside.has(border.a) !== inside.has(border.b));
}

/** Share of their length that is soft, 0..1; lost stretches count on neither side. */
export function softShare(borders: readonly Border[]): number {
  let soft = 0;
  let seen = 0;
  for (const border of borders) {
    soft += border.lengthMm * border.soft;
    seen += border.lengthMm * Math.max(0, 1 - border.lost);
  }
  return seen > 0 ? Math.min(1, soft / seen) : 0;
}
