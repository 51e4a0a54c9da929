import type { Checkpoint } from '../palette/checkpoint.ts';
import { combinations } from '../palette/combinations.ts';
import { betterFamilyPaints } from './better-family-paints.ts';
import { sharedCost } from './family-subset.ts';
import type { FamilyWork } from './family-work.ts';
import type { Ground } from './look-at-puddle.ts';
import { itemsOf, partitions } from './partitions.ts';
import type { PuddleOption } from './puddle-option.ts';

/**
 * For every family the (at most three) paints it keeps to through all its washes, as bits. Families beyond the
 * number of puddles have to share one throughout at first, by the split of least loss; then each family's paints are
 * bettered, sharing wash by wash.
 */
export async function chooseFamilyPaints(
  works: readonly FamilyWork[],
  options: readonly PuddleOption[],
  paintCount: number,
  puddles: number,
  paper: Ground,
  checkpoint: Checkpoint,
): Promise<number[]> {
  const masks = combinations(paintCount, Math.min(3, paintCount)).map((set) =>
    set.reduce((bits, member) => bits | (1 << member), 0),
  );
  const groups = Math.min(works.length, puddles);
  const splits = partitions(works.length, groups).filter((split) => split.length === groups);
  const bestOf = new Map<number, { cost: number; mask: number }>();
  const wanted = [...new Set(splits.flat())];
  for (const [n, bits] of wanted.entries()) {
    const members = itemsOf(bits).map((i) => works[i] as FamilyWork);
    let best = { cost: Number.POSITIVE_INFINITY, mask: masks[0] ?? 0 };
    for (const mask of masks) {
      await checkpoint((0.5 * n) / wanted.length);
      const cost = sharedCost(members, options, mask, paper);
      if (cost < best.cost) best = { cost, mask };
    }
    bestOf.set(bits, best);
  }
  let least = Number.POSITIVE_INFINITY;
  let chosen = splits[0] ?? [];
  for (const split of splits) {
    const cost = split.reduce((all, bits) => all + (bestOf.get(bits)?.cost ?? 0), 0);
    if (cost < least) {
      least = cost;
      chosen = split;
    }
  }
  const shared = works.map((_, i) => {
    const group = chosen.find((bits) => (bits >>> i) & 1) ?? 0;
    return bestOf.get(group)?.mask ?? 0;
  });
  if (works.length <= puddles) return shared;
  return betterFamilyPaints(works, shared, masks, options, puddles, paper, (part) =>
    checkpoint(0.5 + 0.5 * part),
  );
}
