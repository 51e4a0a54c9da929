import {
  type BrokenRule,
  broken,
  type Check,
  overlap,
  rowsUnder,
  stainsOf,
  washesOf,
} from './broken-rule.ts';

function liftSentence(stains: readonly (number | null)[]): string | null {
  if (stains.length === 0) return 'There is no paint to lift here yet.';
  return stains.some((stain) => stain !== 0)
    ? 'Staining paint lies here: it only gets paler in patches and does not come out.'
    : null;
}

/** R11: only what lifts is lifted, when no wash closes it again. */
export const liftWhatLifts: Check = (plan) =>
  plan.steps.flatMap((step, n): BrokenRule[] => {
    if (step.kind !== 'lift') return [];
    const sentence = liftSentence(stainsOf(plan, rowsUnder(plan, step)));
    const later = washesOf({ ...plan, steps: plan.steps.slice(n + 1) });
    return [
      ...(sentence ? [broken('R11', step, `${step.key} lifts what does not lift`, sentence)] : []),
      ...(later.some((wash) => overlap(wash, step))
        ? [
            broken(
              'R17',
              step,
              `${step.key} before a wash over it`,
              'A wash still goes over the lifted lights and closes them again.',
            ),
          ]
        : []),
    ];
  });

/** R16: only paint that does not lift is wetted again. */
export const wetAgain: Check = (plan) =>
  washesOf(plan).flatMap((step): BrokenRule[] => {
    if (step.technique !== 'wet-in-wet') return [];
    if (!stainsOf(plan, rowsUnder(plan, step)).includes(0)) return [];
    return [
      broken(
        'R16',
        step,
        `${step.key} wets paint that lifts`,
        'Wetting it again loosens the paint below, which lifts easily: it goes patchy.',
      ),
    ];
  });
