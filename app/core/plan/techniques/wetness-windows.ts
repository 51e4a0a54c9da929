import type { Range } from '../../colour/lab.ts';
import { minutesInWords } from '../../words/minutes.ts';
import type { SmallTechnique } from '../plan.ts';
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

/**
 * When a technique is done: the sign to look for, and the minutes after the stroke. The shine may go at either end
 * of its clock, so both are said: the latest alone would promise too much.
 */
export function techniqueWindow(
  { paper, minutes }: Pick<SmallTechnique, 'paper' | 'minutes'>,
  shineMinutes: Range,
): string {
  if (minutes === null) return `on ${paper} paper`;
  switch (paper) {
    case 'satin':
      return `as the shine goes, after ${minutesInWords(minutes)}`;
    case 'damp':
      return `once the shine has gone, ${minutesInWords(minutes)} after the stroke`;
    default:
      return `while it shines; the shine goes in ${minutesInWords(shineMinutes)}`;
  }
}
