/**
 * What the surface of a paint film does to light. Saunderson, J. L. (1942), Calculation of the color of
 * pigmented plastics, J. Opt. Soc. Am. 32, 727-736 (his K1, K2; citation from memory), with the light
 * thrown back at the surface seen as well.
 */
export interface Surface {
  /** Share of the light from outside that is thrown back before it meets paint, 0..1. */
  readonly k1: number;
  /**
   * Share of the light from inside that is thrown back into the paint, 0..1. At 0 the surface is a plain
   * floor: R = k1 + (1 - k1) r.
   */
  readonly k2: number;
}

/**
 * Reflectance inside the film, as Kubelka and Munk count it, of a reflectance `R` seen from outside (0..1).
 * For paper, and for a dried wash as the ground of the next. The inverse of `outside`; below 0 where R is
 * less than k1, which no surface can show.
 */
export const inside = (R: number, { k1, k2 }: Surface): number => (R - k1) / (1 - k1 - k2 + k2 * R);

/**
 * Reflectance seen from outside of a reflectance `r` inside the film (0..1): once, over the whole stack.
 */
export const outside = (r: number, { k1, k2 }: Surface): number =>
  k1 + ((1 - k1) * (1 - k2) * r) / (1 - k2 * r);

/** How `outside` grows with r. */
export const slopeOfOutside = (r: number, { k1, k2 }: Surface): number =>
  ((1 - k1) * (1 - k2)) / (1 - k2 * r) ** 2;
