import { type BrokenRule, broken, type Check, rowsOf, washesOf } from './broken-rule.ts';

/** R2: on every shape the lighter wash before the darker one. */
export const lightBeforeDark: Check = (plan) => {
  const reached = new Map<number, number>();
  return washesOf(plan).flatMap((step): BrokenRule[] => {
    const rows = rowsOf(plan, step);
    let late = false;
    for (const i of step.slots) {
      const slot = plan.slots[i];
      const washes = rows
        .filter((row) => row.passage === slot?.passage && row.family === slot?.family)
        .map(({ wash }) => wash);
      if (washes.length === 0) continue;
      if (Math.min(...washes) < (reached.get(i) ?? 0)) late = true;
      reached.set(i, Math.max(reached.get(i) ?? 0, ...washes));
    }
    if (!late) return [];
    return [
      broken(
        'R2',
        step,
        `${step.key} is too late`,
        'A lighter wash goes over darks that lie there already: it loosens them and they smear into it.',
      ),
    ];
  });
};

/** L* by which two sums of the same light may differ. */
const rounding = 1e-6;

/** R2: transparent paint cannot lighten; where opaque paint does, it goes chalky. */
export const nothingLightens: Check = ({ steps, paper }) =>
  steps.flatMap((step, n) => {
    const before = steps[n - 1]?.after;
    const slot = step.after.findIndex(([lightness], i) => {
      const ground = n === 0 ? paper : before?.[i];
      return ground !== undefined && lightness > ground[0] + rounding;
    });
    if (slot < 0) return [];
    return [
      broken(
        'R2',
        step,
        `${step.key} lightens slot ${slot}`,
        'This paint covers what lies below and makes it lighter and chalky instead of deeper.',
      ),
    ];
  });
