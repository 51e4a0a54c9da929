import type { Part } from '../paint/mix.ts';
import { strengthOf } from '../paint/paint.ts';
import type { MixSaid } from '../words/plan/mending.ts';
import type { PaletteEntry, WashPlan } from './plan.ts';

/** What the paints of a plan are called, by their ids. */
export const paintNameIn =
  ({ palette }: Pick<WashPlan, 'palette'>): ((paint: string) => string) =>
  (paint) =>
    palette.find(({ id }) => id === paint)?.name ?? paint;

/** 'burnt sienna (PBr7)'; the name alone where a tube has no Colour Index name of its own. */
export const nameWithCode = ({ name, ci }: Pick<PaletteEntry, 'name' | 'ci'>): string =>
  ci ? `${name} (${ci})` : name;

/** Parts of a mix of a plan by the names of their paints. */
export const mixSaid = (
  plan: Pick<WashPlan, 'palette' | 'optics'>,
  parts: readonly Part[],
): MixSaid =>
  parts.map(({ paint, parts: n }) => ({
    paint: paintNameIn(plan)(paint),
    parts: n,
    strength: strengthOf(plan.optics.find(({ id }) => id === paint) ?? {}),
  }));
