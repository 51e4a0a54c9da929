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

/** Lays washes; the same wash on the same dried sheet is computed once and answered again. */
function memoizeLayer(): typeof layMix {
  const known = new Map<DriedSheet, Map<unknown, Map<number, DriedSheet>>>();
  return (mix, load, dried) => {
    const mixes = known.get(dried) ?? new Map<unknown, Map<number, DriedSheet>>();
    known.set(dried, mixes);
    const loads = mixes.get(mix) ?? new Map<number, DriedSheet>();
    mixes.set(mix, loads);
    const laid = loads.get(load) ?? layMix(mix, load, dried);
    loads.set(load, laid);
    return laid;
  };
}

/**
 * Estimated cost of all washes when every family keeps to its paints and shares puddles wash by wash. The sum stops
 * early, with the cost so far, as soon as it reaches `enough`.
 */
function estimateWashesCost(
  { works, fitter, puddles, paper }: PaintChoice,
  paintBits: readonly number[],
  lay: typeof layMix,
  enough: number,
): number {
  const driedSheets: DriedSheet[] = works.map(() => paper);
  const washes = works.reduce((most, work) => Math.max(most, work.washes.length), 0);
  let total = 0;
  for (let wash = 0; wash < washes; wash++) {
    const active = [...works.keys()].filter((f) => works[f]?.washes[wash]);
    const families = active.map((f) => ({
      work: works[f],
      paintBits: paintBits[f],
      dried: driedSheets[f],
    }));
    const { cost, familyWashes } = sharePuddles(families, fitter, wash, puddles, 'estimate');
    total += cost;
    if (total >= enough) return total;
    for (const [k, f] of active.entries()) {
      const familyWash = familyWashes[k];
      if (familyWash) driedSheets[f] = lay(familyWash.option, familyWash.load, driedSheets[f]);
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
  const paintBits = [...start];
  let least = estimateWashesCost(choice, paintBits, lay, Number.POSITIVE_INFINITY);
  let tries = 0;
  for (let better = true; better; ) {
    better = false;
    for (let f = 0; f < paintBits.length; f++) {
      for (const set of sets) {
        if (set === paintBits[f] || tries >= mostTries) continue;
        tries++;
        await checkpoint(tries / mostTries);
        const before = paintBits[f];
        paintBits[f] = set;
        const cost = estimateWashesCost(choice, paintBits, lay, least);
        if (cost < least - 1e-9) {
          least = cost;
          better = true;
        } else {
          paintBits[f] = before;
        }
      }
    }
  }
  return paintBits;
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
      const paintBits = some.map(() => set);
      const cost = estimateWashesCost({ ...choice, works: some }, paintBits, lay, least.cost);
      if (cost < least.cost) least = { cost, set };
    }
    return least.set;
  };
  if (works.length <= puddles) {
    const paintBits: number[] = [];
    for (const work of works) paintBits.push(await best([work]));
    return paintBits;
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
