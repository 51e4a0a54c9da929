import type { Lab } from '../colour/lab.ts';
import { hueAtLightness } from '../paint/hue-at-lightness.ts';
import type { FamilyColour } from '../reading/families/family-edit.ts';
import type { Family } from '../reading/reading.ts';
import type { ColourWish } from './plan-wishes.ts';

/** The family whose a*, b* are nearest to those she saw when she decided; null where there is none. */
function familyOfColour(families: readonly Family[], [a, b]: FamilyColour): Family | null {
  let nearest: Family | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const family of families) {
    const distance = Math.hypot(family.lab[1] - a, family.lab[2] - b);
    if (distance >= least) continue;
    nearest = family;
    least = distance;
  }
  return nearest;
}

/** Family id -> paint id; a family that keeps its own colour is not in it. A later choice counts. */
export function paintOfFamilies(
  wish: ColourWish | undefined,
  families: readonly Family[],
): ReadonlyMap<number, string> {
  if (wish?.mode === 'one') return new Map(families.map(({ id }) => [id, wish.paint]));
  const chosen = new Map<number, string>();
  for (const { family, paint } of wish?.mode === 'own' ? wish.hues : []) {
    const found = familyOfColour(families, family);
    if (found) chosen.set(found.id, paint);
  }
  return chosen;
}

/**
 * Colours of slots (lightness, a*, b* on the sheet) in the hues she chose: lightness untouched, a* and b*
 * those of the family's paint where it is as light as that. `ladderOf` gives a paint's dry colours over the
 * paper from light to dark; a paint it does not know leaves the slot as it is.
 */
export function inWishedColours(
  slots: readonly { readonly family: number; readonly colour: Lab }[],
  paints: ReadonlyMap<number, string>,
  ladderOf: (paint: string) => readonly Lab[] | undefined,
): Lab[] {
  return slots.map(({ family, colour }) => {
    const paint = paints.get(family);
    const ladder = paint === undefined ? undefined : ladderOf(paint);
    return ladder ? [colour[0], ...hueAtLightness(ladder, colour[0])] : colour;
  });
}

/** The paints a wish for colours names, each once. */
export const paintsWished = (wish: ColourWish | undefined): readonly string[] =>
  wish?.mode === 'one'
    ? [wish.paint]
    : [...new Set(wish?.mode === 'own' ? wish.hues.map(({ paint }) => paint) : [])];
