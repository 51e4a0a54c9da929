import { type BrokenRule, broken, type Check, passageOf, washesOf } from './broken-rule.ts';

/** R18: one passage is finished before the next, and every wash says what is done at their line. */
export const passagesApart: Check = (plan) => {
  const steps = washesOf(plan);
  const passages = steps.map(passageOf);
  if (new Set(passages).size < 2) return [];
  return steps.flatMap((step, n): BrokenRule[] => {
    const back = passages[n] !== passages[n - 1] && passages.slice(0, n).includes(passageOf(step));
    return [
      ...(back
        ? [
            broken(
              'R18',
              step,
              `${step.key} goes back to a passage that was left`,
              `You go back to the ${passageOf(step)} after painting up to its line: it must be cut round once more, and a slip shows.`,
            ),
          ]
        : []),
      ...(step.rules.includes('R18')
        ? []
        : [
            broken(
              'R18',
              step,
              `${step.key} says nothing of the line`,
              'Nothing is said of the line between ground and subject: paint only up to it.',
            ),
          ]),
    ];
  });
};
