import type { Part } from '../../../app/model/part.ts';

/** Whole parts of one mix sum to at most this, of at most so many paints (design). */
const mostParts = 8;
const mostPaints = 3;
/** More than so much of the old puddle nobody mixes for one part (own figure). */
const mostOld = 12;

/** A mix next to another: one part of a paint to `to` parts of it. */
export interface NearbyParts {
  readonly parts: readonly Part[];
  readonly added: string;
  readonly to: number;
}

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));

/**
 * All mixes made by adding one part of a paint of the palette to a puddle of whole parts: to the puddle once
 * over, to twice as much of it, and so on, while the parts (in lowest terms) sum to at most 8. Paints it has
 * come first, as the palette lists them; at most three paints.
 */
export function nearbyParts(parts: readonly Part[], palette: readonly string[]): NearbyParts[] {
  const sum = parts.reduce((all, part) => all + part.parts, 0);
  const has = (paint: string): boolean => parts.some((part) => part.paint === paint);
  const own = parts.length > 1 ? palette.filter(has) : [];
  const others = parts.length < mostPaints ? palette.filter((paint) => !has(paint)) : [];
  const found: NearbyParts[] = [];
  for (const added of [...own, ...others]) {
    for (let times = 1; sum * times <= mostOld; times++) {
      const grown = parts.map(({ paint, parts: n }) => ({
        paint,
        parts: n * times + (paint === added ? 1 : 0),
      }));
      if (!has(added)) grown.push({ paint: added, parts: 1 });
      const common = grown.map((part) => part.parts).reduce(divisor);
      if (sum * times + 1 > mostParts * common) continue;
      const least = grown.map(({ paint, parts: n }) => ({ paint, parts: n / common }));
      found.push({ parts: least, added, to: sum * times });
    }
  }
  return found;
}
