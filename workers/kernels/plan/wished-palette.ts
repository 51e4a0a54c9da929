import type { PlanWishes } from '../../../app/model/plan-wishes.ts';
import { paintsWished } from '../../../app/model/wished-colours.ts';
import { proposedPaletteSize } from '../palette/paints-allowed.ts';

const joined = (one: readonly string[] = [], two: readonly string[] = []): string[] => [
  ...new Set([...one, ...two]),
];

/**
 * Wishes for the palette that go with her colours: one paint is the whole palette; paints that give the
 * families their hues are in it, others only come in to reach the values. What she left out for good and
 * now wants as a hue is in: the later word counts.
 */
export function wishedPalette(wishes: PlanWishes): PlanWishes {
  const paints = paintsWished(wishes.colours);
  if (paints.length === 0) return wishes;
  const exclude = (wishes.exclude ?? []).filter((id) => !paints.includes(id));
  if (wishes.colours?.mode === 'one') {
    return { ...wishes, chosen: paints, must: [], exclude };
  }
  const must = joined(wishes.must, paints);
  return {
    ...wishes,
    must,
    exclude,
    ...(wishes.chosen?.length && { chosen: joined(wishes.chosen, paints) }),
    paletteSize: Math.max(wishes.paletteSize ?? proposedPaletteSize, must.length),
  };
}
