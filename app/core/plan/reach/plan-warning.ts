import type { Sentence } from '../../words/plan/words.ts';

/** Warnings about what the plan can't reach. */
const reachCodes = [
  ...(['nothing-to-paint', 'dark-out-of-reach', 'colour-out-of-reach'] as const),
  ...(['shape-out-of-reach', 'too-many-layers', 'wash-too-large', 'whites-too-small'] as const),
] as const;

/** What a plan can't reach, cause and what to do. The first in a list matters most. */
export interface PlanWarning {
  readonly code: (typeof reachCodes)[number];
  readonly text: Sentence;
  /** Key of the one step of a plan it speaks of; left out: it is about all of it. */
  readonly step?: string;
}

/** Whether a warning that was kept, perhaps by another version, is one of those. */
export const isOfReach = ({ code }: { readonly code: string }): boolean =>
  reachCodes.some((each) => each === code);
