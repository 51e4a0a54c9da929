import type { Technique } from './technique.ts';
import type { StepKind } from './wash-plan.ts';

const washes: readonly Technique[] = ['wet on dry', 'wet-in-wet', 'glaze', 'dry brush'];
const choices: Partial<Record<StepKind, readonly Technique[]>> = {
  wash: washes,
  accents: ['dry brush', 'wet on dry'],
  'last-lights': ['opaque white', 'scraping'],
};

/** The ways a step of this kind can be painted; none where there is nothing to choose. */
export const techniqueChoices = (kind: StepKind): readonly Technique[] => choices[kind] ?? [];
