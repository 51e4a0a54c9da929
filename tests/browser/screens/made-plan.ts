import type { WashPlan } from '../../../app/model/wash-plan.ts';
import { buildWashPlan } from '../../../workers/kernels/plan/build-wash-plan.ts';
import { madeReading, tableOf } from '../../unit/kernels/paint/made-reading.ts';

/** A real plan of two colours in three values, with three paints. */
export const madePlan = (): Promise<WashPlan> =>
  buildWashPlan(
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
