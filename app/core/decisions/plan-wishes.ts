import type { PaperChoice } from '../drying/paper-choice.ts';
import type { Weather } from '../drying/weather.ts';
import type { Paint } from '../paint/paint.ts';
import type { StrengthCorrection } from '../paint/strength-corrections.ts';
import type { FamilyColour } from '../reading/families/family-edit.ts';
import type { PassagesChoice, PlanEdit } from './plan-edit.ts';

/** What she may decide about palette and plan; what is left out is proposed. */
export interface PlanWishes {
  /** Paint ids she owns; left out: her own paints and the built-in ones most boxes hold. */
  readonly box?: readonly string[];
  /** Paints of her own, known beside the built-in ones. */
  readonly ownPaints?: readonly Paint[];
  /** By how much her scraps correct the strength of paints. */
  readonly strengths?: readonly StrengthCorrection[];
  /** Left out: as in the photo. */
  readonly colours?: ColourWish;
  /** At most this many paints, up to `largestPalette`. */
  readonly paletteSize?: number;
  readonly must?: readonly string[];
  readonly exclude?: readonly string[];
  /** Exactly these paints: no search. */
  readonly chosen?: readonly string[];
  /** The palette the painting has: it stays while no other is clearly better. */
  readonly present?: readonly string[];
  /** Washes over each other, up to `mostWashes` (R9). */
  readonly washes?: number;
  readonly puddlesPerWash?: number;
  /** Order of ground and subject; means nothing without a subject. Left out: as proposed. */
  readonly passages?: PassagesChoice;
  readonly weather?: Weather;
  /** Left out: the usual paper. */
  readonly paper?: PaperChoice;
  /** Minutes she has in one evening; left out: no hurry. */
  readonly evening?: number;
  /** Her changes of the steps, in order. */
  readonly edits?: readonly PlanEdit[];
}

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

/** The number she asked for; RangeError with a sentence where it is none of `least` to `most`. */
export function wholeNumber(asked: number, least: number, most: number, what: string): number {
  if (!Number.isInteger(asked) || asked < least || asked > most) {
    throw new RangeError(`${what}: choose a whole number from ${least} to ${most}.`);
  }
  return asked;
}
