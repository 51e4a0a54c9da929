import type { Checkpoint } from '../palette/checkpoint.ts';
import type { FamilyWork } from './family-work.ts';
import { washedOver } from './ground.ts';
import type { Ground } from './look-at-puddle.ts';
import type { PuddleOption } from './puddle-option.ts';
import { sharePuddles } from './share-puddles.ts';

/** Lays a wash, and hands out the same ground again for the same wash on the same ground. */
function rememberedWash(): typeof washedOver {
  const known = new Map<Ground, Map<unknown, Map<number, Ground>>>();
  return (mix, load, ground) => {
    const mixes = known.get(ground) ?? new Map<unknown, Map<number, Ground>>();
    known.set(ground, mixes);
    const loads = mixes.get(mix) ?? new Map<number, Ground>();
    mixes.set(mix, loads);
    const laid = loads.get(load) ?? washedOver(mix, load, ground);
    loads.set(load, laid);
    return laid;
  };
}

/** Tries after which the search rests: some seconds on a slow phone. */
const mostTries = 160;

/**
 * What all washes cost, roughly, when every family keeps to its paints and shares wash by wash; given up, with
 * what it costs so far, once it is no better than `enough`.
 */
function roughCost(
  works: readonly FamilyWork[],
  masks: readonly number[],
  options: readonly PuddleOption[],
  puddles: number,
  paper: Ground,
  lay: typeof washedOver,
  enough: number,
): number {
  const grounds: Ground[] = works.map(() => paper);
  const washes = works.reduce((most, work) => Math.max(most, work.washes.length), 0);
  let total = 0;
  for (let wash = 0; wash < washes; wash++) {
    const active = [...works.keys()].filter((f) => works[f]?.washes[wash]);
    const families = active.map((f) => ({
      work: works[f] as FamilyWork,
      mask: masks[f] as number,
      ground: grounds[f] as Ground,
    }));
    const { cost, strokes } = sharePuddles(families, options, wash, puddles, false);
    total += cost;
    if (total >= enough) return total;
    for (const [k, f] of active.entries()) {
      const stroke = strokes[k];
      if (stroke) grounds[f] = lay(stroke.option, stroke.load, grounds[f] as Ground);
    }
  }
  return total;
}

/**
 * Families that share a puddle in one wash may part in the next, so other paints may serve them better than
 * those found for sharing throughout: changes one family's paints at a time (`choices` are sets of three, as bits)
 * and keeps what costs less, until nothing helps.
 */
export async function betterFamilyPaints(
  works: readonly FamilyWork[],
  start: readonly number[],
  choices: readonly number[],
  options: readonly PuddleOption[],
  puddles: number,
  paper: Ground,
  checkpoint: Checkpoint,
): Promise<number[]> {
  const masks = [...start];
  const lay = rememberedWash();
  let least = roughCost(works, masks, options, puddles, paper, lay, Number.POSITIVE_INFINITY);
  let tries = 0;
  for (let better = true; better; ) {
    better = false;
    for (let f = 0; f < works.length; f++) {
      for (const mask of choices) {
        if (mask === masks[f] || tries >= mostTries) continue;
        tries++;
        await checkpoint(tries / mostTries);
        const before = masks[f] as number;
        masks[f] = mask;
        const cost = roughCost(works, masks, options, puddles, paper, lay, least);
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
