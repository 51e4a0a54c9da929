import type { Reading } from '../../model/reading.ts';
import type { WashPlan } from '../../model/wash-plan.ts';
import type { PaintCalls } from '../../state/paint-calls.ts';

/** What puddles are shown from. */
export interface PuddleSource {
  plan: WashPlan;
  /** Family id -> what it is called. */
  familyName: (family: number) => string;
  /** Left out: the mixes next to a puddle are not offered. */
  calls?: PaintCalls;
  /** Left out: nothing is said of how much to mix. */
  sheet?: Reading['sheet'] | undefined;
  /** Only each puddle at its strongest: for the darkest touches. */
  strongest?: boolean;
}
