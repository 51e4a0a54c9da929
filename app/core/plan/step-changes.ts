import type { Lab } from '../colour/lab.ts';
import type { Mark } from './details/mark.ts';
import type { WashPlan } from './plan.ts';

/** What a step makes of the sheet. */
interface StepChanges {
  /** Slots that look otherwise than before. */
  readonly slots: ReadonlySet<number>;
  /** Their share of the sheet, 0..1. */
  readonly share: number;
  /** By how much the one that changes most gets darker, L*. */
  readonly darkerBy: number;
  /** Marks set, each on a small shape of its own. */
  readonly marks: readonly Mark[];
}

/** No one sees less, in any of L*, a*, b*. */
const seen = 0.5;

const differs = (one: Lab, other: Lab): boolean =>
  one.some((part, k) => Math.abs(part - (other[k] ?? 0)) >= seen);

/** How the sheet after step `index` differs from the sheet before it; the bare paper before the first. */
export function stepChanges(
  { steps, slots, paper }: Pick<WashPlan, 'steps' | 'slots' | 'paper'>,
  index: number,
): StepChanges {
  const after = steps[index]?.after ?? [];
  const before = (i: number): Lab => steps[index - 1]?.after[i] ?? paper;
  const lying = new Set(steps[index - 1]?.marks);
  const changed = [...after.keys()].filter((i) => differs(after[i], before(i)));
  return {
    slots: new Set(changed),
    share: changed.reduce((sum, i) => sum + (slots[i]?.share ?? 0), 0),
    darkerBy: changed.reduce((most, i) => Math.max(most, before(i)[0] - (after[i]?.[0] ?? 0)), 0),
    marks: (steps[index]?.marks ?? []).filter((mark) => !lying.has(mark)),
  };
}
