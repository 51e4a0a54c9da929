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
 * Of dried paint on paper. k2: the acrylic sources of the optics table were reduced with 0.6 to 0.65, and
 * cross-validation on measured watercolours agrees; k1: lets the darkest published masstones, L* 19 to 25, be
 * reached (paint/data/pigment-optics.json, `surface`).
 */
export const drySurface: Surface = { k1: 0.025, k2: 0.6 };

/** Of plans made before inner reflection was taken in: a plain floor. */
export const plainFloor: Surface = { k1: 0.03, k2: 0 };

/**
 * Reflectance inside the film, as Kubelka and Munk count it, of a reflectance `R` seen from outside (0..1).
 * For paper, and for a dried wash as the ground of the next. The inverse of `outside`; below 0 where R is
 * less than k1, which no surface can show.
 */
export const inside = (R: number, { k1, k2 }: Surface): number => (R - k1) / (1 - k1 - k2 + k2 * R);

/** The share of the light inside the film that comes out of it, of a reflectance `r` inside (0..1). */
export const escaping = (r: number, k2: number): number => ((1 - k2) * r) / (1 - k2 * r);

/**
 * What is seen of light that escapes (0..1), or of a weighted mean of it: the surface throws back its own share.
 */
export const addGlance = (light: number, k1: number): number => k1 + (1 - k1) * light;

/**
 * Reflectance seen from outside of a reflectance `r` inside the film (0..1): once, over the whole stack.
 */
export const outside = (r: number, { k1, k2 }: Surface): number => addGlance(escaping(r, k2), k1);

/** How `outside` grows with r. */
export const slopeOfOutside = (r: number, { k1, k2 }: Surface): number =>
  ((1 - k1) * (1 - k2)) / (1 - k2 * r) ** 2;
