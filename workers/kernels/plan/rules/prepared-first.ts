import { type BrokenRule, broken, type Check } from './broken-rule.ts';

const tooLate: Record<string, string> = {
  prepare: 'The first wash goes on a sheet that is not fixed: it buckles.',
  puddles: 'The first wash begins before its colours are mixed: it dries while you mix.',
  transfer: 'Pencil over a wash can not be rubbed out any more.',
};

/** What is got ready comes before the first wash (common practice, no source). */
export const preparedFirst: Check = ({ steps }) => {
  const first = steps.findIndex(({ kind }) => kind === 'wash');
  if (first < 0) return [];
  return steps.slice(first).flatMap((step): BrokenRule[] => {
    const sentence = tooLate[step.kind];
    return sentence ? [broken('ready', step, `${step.key} after a wash`, sentence)] : [];
  });
};
