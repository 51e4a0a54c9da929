import type { Lab } from '../../../app/model/lab.ts';
import type { NeighbourWay } from '../../../app/model/mix-neighbour.ts';

/**
 * Hue angles in a*, b*, degrees: about where red, yellow, green and blue look pure (from memory); warm
 * towards orange, cool the other way (common practice, no source).
 */
const hueOfWay = {
  warmer: 60,
  cooler: 240,
  'more yellow': 90,
  'more red': 25,
  'more blue': 260,
  'more green': 160,
} as const satisfies Partial<Record<NeighbourWay, number>>;

export type ColourWay = keyof typeof hueOfWay | 'duller' | 'clearer';

/** Below this much a* and b* a colour has no hue to be duller or clearer in. */
const leastChroma = 4;

/** The way as a direction of length 1 in a*, b*, seen from a colour; null where it has none. */
export function directionOf(way: ColourWay, [, a, b]: Lab): readonly [a: number, b: number] | null {
  if (way === 'duller' || way === 'clearer') {
    const chroma = Math.hypot(a, b);
    if (chroma < leastChroma) return null;
    const sign = way === 'clearer' ? 1 : -1;
    return [(sign * a) / chroma, (sign * b) / chroma];
  }
  const angle = (hueOfWay[way] * Math.PI) / 180;
  return [Math.cos(angle), Math.sin(angle)];
}
