import type { Part } from '../paint/mix.ts';
import { partsInWords } from '../paint/mix-words.ts';
import { strengthOf } from '../paint/paint.ts';
import type { PaletteEntry, WashPlan } from './plan.ts';

/** What the paints of a plan are called, by their ids. */
export const paintNameIn =
  ({ palette }: Pick<WashPlan, 'palette'>): ((paint: string) => string) =>
  (paint) =>
    palette.find(({ id }) => id === paint)?.name ?? paint;

/** 'burnt sienna (PBr7)'; the name alone where a tube has no Colour Index name of its own. */
export const nameWithCode = ({ name, ci }: Pick<PaletteEntry, 'name' | 'ci'>): string =>
  ci ? `${name} (${ci})` : name;

/** Parts of a mix of a plan in words: 'mostly ultramarine blue, a touch of burnt sienna'. */
export function mixWordsIn(
  plan: Pick<WashPlan, 'palette' | 'optics'>,
): (parts: readonly Part[]) => string {
  const strength = (id: string): number =>
    strengthOf(plan.optics.find((paint) => paint.id === id) ?? {});
  return (parts) => partsInWords(parts, paintNameIn(plan), strength);
}
