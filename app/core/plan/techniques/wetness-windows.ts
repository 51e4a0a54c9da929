import type { Range } from '../../colour/lab.ts';
import type { StepDraft } from '../steps/step-draft.ts';

type Clocks = Pick<StepDraft, 'shineMinutes' | 'dryMinutes'>;

/** From the stroke on, until its shine has gone at the latest. */
export const whileItShines = ({ shineMinutes }: Clocks): Range => [0, shineMinutes[1]];

/** As the shine goes: somewhere in the range of its clock. */
export const asTheShineGoes = ({ shineMinutes }: Clocks): Range => shineMinutes;

/** Once the shine has gone, until it may be dry at the earliest. */
export const whileDamp = ({ shineMinutes, dryMinutes }: Clocks): Range => [
  shineMinutes[0],
  Math.max(shineMinutes[0], dryMinutes[0]),
];
