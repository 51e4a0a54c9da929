import type { Step } from '../../../app/model/wash-plan.ts';

/** A step before it has its place: the number and the expected sheet come with the order. */
export type StepDraft = Omit<Step, 'n' | 'after'>;

/** What most steps that put nothing wet down have in common. */
export const quietStep = {
  watch: '',
  bands: [],
  families: [],
  slots: [],
  mixes: [],
  paper: 'bone dry',
  technique: 'none',
  soften: '',
  shineMinutes: [0, 0],
  dryMinutes: [0, 0],
  cautions: [],
  rules: [],
} as const satisfies Partial<StepDraft>;
