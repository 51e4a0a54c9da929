import {
  type BrokenRule,
  broken,
  type Check,
  passageOf,
  washesOf,
  washNumberOf,
} from './broken-rule.ts';

/** R9: no more washes over each other than the paper bears. */
export const fewWashes: Check = (plan, { washes }) => {
  const over = new Map<number, number>();
  return washesOf(plan).flatMap((step): BrokenRule[] => {
    const counts = step.slots.map((i) => {
      const count = (over.get(i) ?? 0) + 1;
      over.set(i, count);
      return count;
    });
    const most = Math.max(0, ...counts);
    if (most <= washes) return [];
    return [
      broken(
        'R9',
        step,
        `${most} washes on ${step.slots[counts.indexOf(most)]}`,
        `This is layer ${most} over the same shapes, and this paper bears ${washes}: it roughens, what lies below comes loose, and colours turn dull.`,
      ),
    ];
  });
};

/** R19: no more washes than there are values. */
export const washesForValues: Check = (plan) => {
  const washes = washesOf(plan);
  return [...new Set(plan.slots.map(({ passage }) => passage))].flatMap((passage): BrokenRule[] => {
    const bands = new Set(
      plan.slots.filter((one) => one.passage === passage && !one.reserve).map(({ band }) => band),
    );
    const own = washes.filter((step) => passageOf(step) === passage);
    const numbers = new Set(own.map(washNumberOf));
    const last = own.at(-1);
    if (!last || numbers.size <= bands.size) return [];
    return [
      broken(
        'R19',
        last,
        `${numbers.size} washes for ${bands.size} values`,
        'There are more washes than values here: the last one only tires the paper.',
      ),
    ];
  });
};
