import { createPlanMemory, type PlanMemory } from '../../../app/core/plan/plan-memory.ts';

const { library, darkest } = createPlanMemory();

/**
 * A memory that knows what this file of tests has asked of boxes, the dear part of a search, but no palette
 * and no wash: every plan made with it is searched and solved anew.
 */
export const warmMemory = (): PlanMemory => ({ ...createPlanMemory(), library, darkest });
