import type { FamilyColour } from './family-edit.ts';

/**
 * Which colours the painting takes; the values stay those of the reading. As in the photo; one paint for
 * all; or for every family the hue of a paint of her box (a family without one keeps its own).
 */
export type ColourWish =
  | { readonly mode: 'photo' }
  | { readonly mode: 'one'; readonly paint: string }
  | {
      readonly mode: 'own';
      readonly hues: readonly { readonly family: FamilyColour; readonly paint: string }[];
    };
