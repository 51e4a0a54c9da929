import type { Technique } from '../../../app/core/decisions/plan-edit.ts';
import type { TimedStep } from '../../../app/core/session/drying-clock.ts';

const step = (
  key: string,
  kind: TimedStep['kind'],
  technique: Technique,
  wet: boolean,
  slots: readonly number[] = [],
) => ({
  key,
  kind,
  technique,
  slots,
  mixes: kind === 'wash' ? [`mix of ${key}`] : [],
  paintMinutes: [5, 20] as const,
  shineMinutes: (wet ? [1, 9] : [0, 0]) as [number, number],
  dryMinutes: (wet ? [30, 90] : [0, 0]) as [number, number],
});

/** Washes the drying model knows, over four slots: 0 and 1 are the ground, 2 and 3 the subject. */
export const washSteps = [
  step('wash/ground/1', 'wash', 'wet on dry', true, [0, 1]),
  step('dry/ground/1', 'dry', 'none', false),
  step('wash/subject/1', 'wash', 'wet on dry', true, [2, 3]),
  step('dry/subject/1', 'dry', 'none', false),
  step('wash/ground/2', 'wash', 'glaze', true, [1]),
  step('last-look', 'last-look', 'none', false),
];
