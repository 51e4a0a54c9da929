import { buildPlan } from '../../../app/core/plan/build-plan.ts';
import type { WashPlan } from '../../../app/core/plan/plan.ts';
import { madeReading, tableOf } from '../../support/plan/made-reading.ts';

/** A real plan of two colours in three values, with three paints. */
export const madePlan = (): Promise<WashPlan> =>
  buildPlan(
    madeReading(
      tableOf(
        [92, 62, 34],
        [
          [4, 36],
          [-2, -22],
        ],
      ),
    ),
    { chosen: ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'] },
    async () => {},
  );
