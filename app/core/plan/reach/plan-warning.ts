import type { Warning, WarningCode } from '../../reading/reading.ts';
import type { Sentence } from '../../words/plan/words.ts';

/** A warning of a plan; those of a reading are stored as sentences. */
export type PlanWarning = Omit<Warning, 'text'> & { readonly text: Sentence };

/** Warnings about what the plan can't reach. */
const reachCodes: readonly WarningCode[] = [
  'nothing-to-paint',
  'dark-out-of-reach',
  'colour-out-of-reach',
  'shape-out-of-reach',
  'too-many-layers',
  'wash-too-large',
  'whites-too-small',
];

export const isOfReach = ({ code }: Pick<Warning, 'code'>): boolean => reachCodes.includes(code);
