import type { Paint } from '../../../app/model/paint.ts';
import type { PlanWishes } from '../../../app/model/plan-wishes.ts';
import type { SolvedPassage } from './plan-facts.ts';

/** A paint no mix needs is left out, unless she asked for it. */
export function usedFirst(
  paints: readonly Paint[],
  passages: readonly SolvedPassage[],
  wishes: PlanWishes,
): Paint[] {
  const asked = new Set([...(wishes.must ?? []), ...(wishes.chosen ?? [])]);
  const used = new Set(
    passages.flatMap((passage) =>
      passage.washes.flatMap((wash) =>
        wash.mixes.flatMap((mix) => mix.parts.map((part) => part.paint)),
      ),
    ),
  );
  return paints.filter((paint) => used.has(paint.id) || asked.has(paint.id));
}
