import { type BrokenRule, broken, type Check } from './broken-rule.ts';

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
