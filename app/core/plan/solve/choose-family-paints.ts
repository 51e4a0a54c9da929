import { mostPaintsInMix } from '../../limits.ts';
import { combinations } from '../../numeric/combinations.ts';
import type { Checkpoint } from '../../palette/checkpoint.ts';
import { type DriedSheet, layMix } from './dried-sheet.ts';
import type { FamilyWork } from './family-work.ts';
import type { WashFitter } from './fit-family-wash.ts';
import { sharePuddles } from './share-puddles.ts';

/** What the families are to be painted with. */
interface PaintChoice {
  readonly works: readonly FamilyWork[];
  readonly fitter: WashFitter;
  readonly paintCount: number;
  /** Most puddles in one wash. */
  readonly puddles: number;
  readonly paper: DriedSheet;
}

/** Lays a wash, and hands out the same ground again for the same wash on the same ground. */
function memoizeLayer(): typeof layMix {
  const known = new Map<DriedSheet, Map<unknown, Map<number, DriedSheet>>>();
  return (mix, load, ground) => {
    const mixes = known.get(ground) ?? new Map<unknown, Map<number, DriedSheet>>();
    known.set(ground, mixes);
    const loads = mixes.get(mix) ?? new Map<number, DriedSheet>();
    mixes.set(mix, loads);
    const laid = loads.get(load) ?? layMix(mix, load, ground);
    loads.set(load, laid);
    return laid;
  };
}

/**
 * What all washes cost, roughly, when every family keeps to its paints and shares wash by wash; given up, with
 * what it costs so far, once it is no better than `enough`.
 */
function estimateWashesCost(
  { works, fitter, puddles, paper }: PaintChoice,
  masks: readonly number[],
  lay: typeof layMix,
  enough: number,
): number {
  const grounds: DriedSheet[] = works.map(() => paper);
  const washes = works.reduce((most, work) => Math.max(most, work.washes.length), 0);
  let total = 0;
  for (let wash = 0; wash < washes; wash++) {
    const active = [...works.keys()].filter((f) => works[f]?.washes[wash]);
    const families = active.map((f) => ({
      work: works[f],
      mask: masks[f],
      ground: grounds[f],
    }));
    const { cost, strokes } = sharePuddles(families, fitter, wash, puddles, false);
    total += cost;
    if (total >= enough) return total;
    for (const [k, f] of active.entries()) {
      const stroke = strokes[k];
      if (stroke) grounds[f] = lay(stroke.option, stroke.load, grounds[f]);
    }
  }
  return total;
}

/** Tries after which the search rests: some seconds on a slow phone. */
const mostTries = 160;

/**
 * Changes one family's paints at a time (`sets` of three, as bits), from `start`, and keeps what costs less
 * with puddles shared wash by wash, until nothing helps.
 */
async function betterFamilyPaints(
  choice: PaintChoice,
  start: readonly number[],
  sets: readonly number[],
  lay: ReturnType<typeof memoizeLayer>,
  checkpoint: Checkpoint,
): Promise<number[]> {
  const masks = [...start];
  let least = estimateWashesCost(choice, masks, lay, Number.POSITIVE_INFINITY);
  let tries = 0;
  for (let better = true; better; ) {
    better = false;
    for (let f = 0; f < masks.length; f++) {
      for (const set of sets) {
        if (set === masks[f] || tries >= mostTries) continue;
        tries++;
        await checkpoint(tries / mostTries);
        const before = masks[f];
        masks[f] = set;
        const cost = estimateWashesCost(choice, masks, lay, least);
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

/** All sets of three paints (of all, if there are fewer), as bits. */
const setsOfThree = (paintCount: number): number[] =>
  combinations(paintCount, Math.min(mostPaintsInMix, paintCount)).map((set) =>
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
  const lay = memoizeLayer();
  const best = async (some: readonly FamilyWork[]): Promise<number> => {
    let least = { cost: Number.POSITIVE_INFINITY, set: sets[0] };
    for (const set of sets) {
      await checkpoint(0);
      const masks = some.map(() => set);
      const cost = estimateWashesCost({ ...choice, works: some }, masks, lay, least.cost);
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
