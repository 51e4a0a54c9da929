import type { Stage } from '../../../app/model/stage.ts';

/** Awaited between pieces of some milliseconds; throws to stop. part: 0..1 of the planning. */
export type PlanCheckpoint = (part: number, stage: Stage) => Promise<void>;
