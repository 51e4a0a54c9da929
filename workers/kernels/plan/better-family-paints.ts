import type { Checkpoint } from '../palette/checkpoint.ts';
import type { PaintChoice } from './paint-choice.ts';
import { type rememberedWash, roughCost } from './rough-plan.ts';

/** Tries after which the search rests: some seconds on a slow phone. */
const mostTries = 160;

/**
 * Changes one family's paints at a time (`sets` of three, as bits), from `start`, and keeps what costs less
 * with puddles shared wash by wash, until nothing helps.
 */
export async function betterFamilyPaints(
  choice: PaintChoice,
  start: readonly number[],
  sets: readonly number[],
  lay: ReturnType<typeof rememberedWash>,
  checkpoint: Checkpoint,
): Promise<number[]> {
  const masks = [...start];
  let least = roughCost(choice, masks, lay, Number.POSITIVE_INFINITY);
  let tries = 0;
  for (let better = true; better; ) {
    better = false;
    for (let f = 0; f < masks.length; f++) {
      for (const set of sets) {
        if (set === masks[f] || tries >= mostTries) continue;
        tries++;
        await checkpoint(tries / mostTries);
        const before = masks[f] as number;
        masks[f] = set;
        const cost = roughCost(choice, masks, lay, least);
        if (cost < least - 1e-9) {
          least = cost;
          better = true;
        } else {
          masks[f] = before;
        }
      }
    }
  }
  return masks;
}
