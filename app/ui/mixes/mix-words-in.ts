import type { Part } from '../../core/paint/mix.ts';
import { mixSaid } from '../../core/plan/paint-name-in.ts';
import type { WashPlan } from '../../core/plan/plan.ts';
import { mixLikeInWords } from '../../core/words/plan/mending.ts';

/** Parts of a mix of a plan in words: 'mostly ultramarine blue, a touch of burnt sienna'. */
export const mixWordsIn =
  (plan: Pick<WashPlan, 'palette' | 'optics'>) =>
  (parts: readonly Part[]): string =>
    mixLikeInWords({ mix: mixSaid(plan, parts) });
