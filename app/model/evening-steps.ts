import type { Step } from './wash-plan.ts';

/** Most painting steps of one evening, and of a whole plan (issue 5 of this project). */
export const mostInEvening = 7;
export const mostPaintingSteps = 12;

/** Shapes pointed at in one step: no one holds more in mind. */
export const mostPointedAt = 7;

/** Whether paint goes down, or off again: what tires her and the paper. */
export const isPaintingStep = ({ kind }: Pick<Step, 'kind'>): boolean =>
  kind === 'wash' ||
  kind === 'lift' ||
  kind === 'splatter' ||
  kind === 'accents' ||
  kind === 'last-lights';

/** Which evening a step belongs to, from 1. */
export const eveningOf = ({ evening = 1 }: Pick<Step, 'evening'>): number => evening;
