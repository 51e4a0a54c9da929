import type { Step } from '../../../app/core/plan/plan.ts';

/** A step that is about nothing in particular, as the `n`-th of a plan. */
export const plainStep = (n: number): Step => ({
  key: `step-${n}`,
  n,
  kind: 'wash',
  title: `Step ${n}`,
  prompt: '',
  watch: '',
  bands: [],
  families: [],
  slots: [],
  mixes: [],
  paper: 'bone dry',
  technique: 'none',
  soften: '',
  paintMinutes: [0, 0],
  shineMinutes: [0, 0],
  dryMinutes: [0, 0],
  cautions: [],
  rules: [],
  after: [],
});
