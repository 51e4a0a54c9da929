import type { Checkpoint } from '../palette/checkpoint.ts';
import { combinations } from '../palette/combinations.ts';
import { betterFamilyPaints } from './better-family-paints.ts';
import type { FamilyWork } from './family-work.ts';
import type { PaintChoice } from './paint-choice.ts';
import { rememberedWash, roughCost } from './rough-plan.ts';

/** All sets of three paints (of all, if there are fewer), as bits. */
const setsOfThree = (paintCount: number): number[] =>
  combinations(paintCount, Math.min(3, paintCount)).map((set) =>
    set.reduce((bits, member) => bits | (1 << member), 0),
  );

/**
 * For every family the (at most three) paints it keeps to through all its washes, as bits. Families that
 * need not share puddles choose each for itself. Else all start from the three paints that serve them best
 * together, and then one family after the other changes its paints as long as that helps.
 */
export async function chooseFamilyPaints(
  choice: PaintChoice,
  checkpoint: Checkpoint,
): Promise<number[]> {
  const { works, puddles } = choice;
  const sets = setsOfThree(choice.paintCount);
  const lay = rememberedWash();
  const best = async (some: readonly FamilyWork[]): Promise<number> => {
    let least = { cost: Number.POSITIVE_INFINITY, set: sets[0] as number };
    for (const set of sets) {
      await checkpoint(0);
      const masks = some.map(() => set);
      const cost = roughCost({ ...choice, works: some }, masks, lay, least.cost);
      if (cost < least.cost) least = { cost, set };
    }
    return least.set;
  };
  if (works.length <= puddles) {
    const masks: number[] = [];
    for (const work of works) masks.push(await best([work]));
    return masks;
  }
  const common = await best(works);
  return betterFamilyPaints(
    choice,
    works.map(() => common),
    sets,
    lay,
    checkpoint,
  );
}
