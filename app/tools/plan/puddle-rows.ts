import { puddleAmount } from '../../model/puddle-amount.ts';
import type { Reading } from '../../model/reading.ts';
import type { WashPlan } from '../../model/wash-plan.ts';

/** How much of every puddle to mix for every wash: one row a puddle x wash. Rough. */
export function puddleRows(plan: WashPlan, { sheet }: Pick<Reading, 'sheet'>) {
  const places = new Map(
    plan.mixes.flatMap(({ puddle, wash }) =>
      puddle === null ? [] : [[`${puddle} ${wash}`, { puddle, wash }] as const],
    ),
  );
  return [...places.values()].flatMap(({ puddle, wash }) => {
    const rows = plan.mixes.filter((mix) => mix.puddle === puddle && mix.wash === wash);
    const amount = puddleAmount(plan, rows, sheet);
    return amount ? [{ puddle, wash, ...amount }] : [];
  });
}
