import { type BrokenRule, broken, type Check, passageOf, washesOf } from './broken-rule.ts';

/** Whites are the paper throughout. */
export const whitesStay: Check = ({ steps, slots, paper }) =>
  steps.flatMap((step, n): BrokenRule[] => {
    const before = steps[n - 1]?.after;
    const lost = slots.findIndex(
      ({ reserve }, i) =>
        reserve &&
        step.after[i]?.[0] !== paper[0] &&
        (before === undefined || before[i]?.[0] === paper[0]),
    );
    if (lost < 0) return [];
    return [
      broken(
        'white',
        step,
        `${lost} painted in ${step.key}`,
        'Paint goes over a white here: that white is lost.',
      ),
    ];
  });

/** From this many small whites on nobody paints round them on wet paper (own figure). */
const manySmall = 3;

/** R1: on wet paper small whites want masking. */
export const smallWhitesInWet: Check = (plan, { smallWhites }) =>
  washesOf(plan).flatMap((step): BrokenRule[] => {
    const count = smallWhites?.get(passageOf(step)) ?? 0;
    if (step.technique !== 'wet-in-wet' || count < manySmall) return [];
    return [
      broken(
        'R1',
        step,
        `${count} small whites in ${step.key}`,
        `On wet paper the paint runs into the ${count} small whites: mask them first, or bring them back at the end.`,
      ),
    ];
  });
