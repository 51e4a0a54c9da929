import { defaultPaper } from '../../paint/colour-of-washes.ts';
import type { Checkpoint } from '../../palette/checkpoint.ts';
import type { Slot } from '../../reading/slot.ts';
import type { SolvedPassage, SolvedWash } from '../plan-facts.ts';
import { chooseFamilyPaints } from './choose-family-paints.ts';
import { type DriedSheet, driedSheetOf, layMix } from './dried-sheet.ts';
import { type FamilyWork, familyWork, paintedBands, washBands } from './family-work.ts';
import { type ActiveFamily, type FamilyWash, WashFitter } from './fit-family-wash.ts';
import { type LayInput, layWash, type Track } from './lay-wash.ts';
import { type FamilyWashes, polishWashes } from './polish-washes.ts';
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
 * wash is chosen for its own bands, light to dark, where families share puddles their paints are
 * bettered one family at a time, and at the end one puddle at a time is changed for all washes.
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
  const paper = driedSheetOf(defaultPaper);
  const { puddles } = input;
  const chosenPaints = await chooseFamilyPaints(
    { works, fitter, paintCount: paints.length, puddles, paper },
    checkpoint,
  );
  const shared = shareWashByWash(works, chosenPaints, fitter, puddles, paper);
  const polished = await polishWashes(works, shared, fitter, paper, checkpoint);
  const tracks = works.map(
    (work, f): Track => ({
      work,
      indices: painted.filter((i) => slots[i].family === work.family),
      paintBits: chosenPaints[f],
      dried: paper,
    }),
  );
  const everyFamily = familiesOf(slots, passage);
  const washes = bands.map((wash): SolvedWash => {
    const laid = new Map(tracks.map((track, f) => [track, polished[f][wash.wash - 1] ?? null]));
    return layWash(passage, wash, everyFamily, tracks, laid, input, paper);
  });
  return { passage, washes };
}

/** What every family is painted with, wash by wash: each wash shares its puddles over the dried ones before it. */
function shareWashByWash(
  works: readonly FamilyWork[],
  paintBits: readonly number[],
  fitter: WashFitter,
  puddles: number,
  paper: DriedSheet,
): FamilyWashes[] {
  const shared = works.map((): (FamilyWash | null)[] => []);
  const dried = works.map(() => paper);
  const most = works.reduce((all, work) => Math.max(all, work.washes.length), 0);
  for (let wash = 0; wash < most; wash++) {
    const active = [...works.keys()].filter((f) => works[f].washes[wash]);
    const families = active.map(
      (f): ActiveFamily => ({ work: works[f], paintBits: paintBits[f], dried: dried[f] }),
    );
    const { familyWashes } = sharePuddles(families, fitter, wash, puddles, 'exact');
    for (const [n, f] of active.entries()) {
      const own = familyWashes[n];
      shared[f].push(own);
      if (own) dried[f] = layMix(own.option, own.load, dried[f]);
    }
  }
  return shared;
}

const familiesOf = (slots: readonly Slot[], passage: string): number[] =>
  [...new Set(slots.filter((slot) => slot.passage === passage).map((slot) => slot.family))].sort(
    (a, b) => a - b,
  );
