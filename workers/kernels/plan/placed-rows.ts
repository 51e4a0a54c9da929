import type { PlacedRow } from './lay-steps.ts';
import type { PlanFacts } from './plan-facts.ts';

/** Every row of the solved washes with the slots of its family that its wash paints. */
export const placedRows = ({
  passages,
  slots,
}: Pick<PlanFacts, 'passages' | 'slots'>): PlacedRow[] =>
  passages.flatMap(({ washes }) =>
    washes.flatMap((wash) =>
      wash.mixes.map((mix) => ({
        mix,
        slots: wash.slots.filter((i) => slots[i]?.family === mix.family),
      })),
    ),
  );
