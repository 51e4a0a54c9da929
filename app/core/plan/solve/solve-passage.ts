import { defaultPaper } from '../../paint/colour-of-washes.ts';
import type { Checkpoint } from '../../palette/checkpoint.ts';
import type { Slot } from '../../reading/slot.ts';
import type { SolvedPassage, SolvedWash } from '../plan-facts.ts';
import { chooseFamilyPaints } from './choose-family-paints.ts';
import { driedSheetOf } from './dried-sheet.ts';
import { familyWork, paintedBands, washBands } from './family-work.ts';
import { type ActiveFamily, WashFitter } from './fit-family-wash.ts';
import { type LayInput, layWash, type Track } from './lay-wash.ts';
import type { PuddleOption } from './puddle-options.ts';
import { sharePuddles } from './share-puddles.ts';

interface SolveInput extends LayInput {
  readonly washes: number;
  readonly puddles: number;
  /** Every mix of the paints. */
  readonly options: readonly PuddleOption[];
}

/**
 * The washes of one passage, solved over each other: families from light to dark, each wash over the
 * dried ones before it, the paper first. Mixes are of at most three paints in whole parts (sum at most
 * 8), loads continuous. A family keeps to the same three paints at most; one wash has at most
 * `puddles` puddles; no wash lightens anything. Lightness weighs most. Not the exact optimum: each
 * wash is chosen for its own bands, light to dark, and where families share puddles their paints are
 * bettered one family at a time.
 */
export async function solvePassage(
  passage: string,
  input: SolveInput,
  checkpoint: Checkpoint,
): Promise<SolvedPassage> {
  const { slots, paints } = input;
  const painted = [...slots.keys()].filter((i) => {
    const slot = slots[i];
    return slot.passage === passage && !slot.reserve && slot.share > 0;
  });
  const own = painted.map((i) => slots[i]);
  const bands = washBands(paintedBands(own), input.washes);
  if (bands.length === 0) return { passage, washes: [] };

  const families = [...new Set(own.map((slot) => slot.family))].sort((a, b) => a - b);
  const works = families.map((family) =>
    familyWork(
      family,
      own.filter((slot) => slot.family === family),
      own,
      bands,
    ),
  );
  const fitter = new WashFitter(input.options);
  const paper = driedSheetOf(Float64Array.from(defaultPaper));
  const { puddles } = input;
  const chosenPaints = await chooseFamilyPaints(
    { works, fitter, paintCount: paints.length, puddles, paper },
    checkpoint,
  );
  const tracks: Track[] = works.map((work, f) => ({
    work,
    indices: painted.filter((i) => slots[i].family === work.family),
    paintBits: chosenPaints[f],
    dried: paper,
  }));
  const everyFamily = familiesOf(slots, passage);
  const solved: SolvedWash[] = [];
  for (const wash of bands) {
    await checkpoint(1);
    const active = tracks.filter((track) => track.work.washes[wash.wash - 1]);
    const { familyWashes } = sharePuddles(
      active.map(({ work, paintBits, dried }): ActiveFamily => ({ work, paintBits, dried })),
      fitter,
      wash.wash - 1,
      input.puddles,
      'exact',
    );
    solved.push(
      layWash(passage, wash, everyFamily, tracks, new Map(zip(active, familyWashes)), input, paper),
    );
  }
  return { passage, washes: solved };
}

function zip<A, B>(one: readonly A[], two: readonly B[]): (readonly [A, B])[] {
  return one.map((each, i) => [each, two[i]]);
}

const familiesOf = (slots: readonly Slot[], passage: string): number[] =>
  [...new Set(slots.filter((slot) => slot.passage === passage).map((slot) => slot.family))].sort(
    (a, b) => a - b,
  );
