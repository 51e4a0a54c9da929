import type { Lab } from '../../../app/model/lab.ts';
import type { Paint } from '../../../app/model/paint.ts';
import type { Slot } from '../../../app/model/reading.ts';
import type { Mix } from '../../../app/model/wash-plan.ts';
import { defaultPaper } from '../optics/default-paper.ts';
import type { Checkpoint } from '../palette/checkpoint.ts';
import { chooseFamilyPaints } from './choose-family-paints.ts';
import { type FamilyWork, familyWork } from './family-work.ts';
import { groundOf, washedOver } from './ground.ts';
import type { Ground } from './look-at-puddle.ts';
import { emptyRow, labOfGround, paintedRow } from './mix-row.ts';
import type { PuddleNames } from './puddle-names.ts';
import { puddleOptions } from './puddle-option.ts';
import { sharePuddles } from './share-puddles.ts';
import type { ActiveFamily, Stroke } from './stroke.ts';
import { paintedBands, type WashBands, washBands } from './wash-bands.ts';

export interface SolvedWash extends WashBands {
  readonly mixes: readonly Mix[];
  /** Slots that get paint: indices into the plan's slots. */
  readonly slots: readonly number[];
  /** Their dry colour afterwards, in the same order. */
  readonly after: readonly Lab[];
}

export interface SolvedPassage {
  readonly passage: string;
  readonly washes: readonly SolvedWash[];
}

export interface SolveInput {
  /** All slots of the plan, with targets for this palette. */
  readonly slots: readonly Slot[];
  /** At most 7. */
  readonly paints: readonly Paint[];
  readonly washes: number;
  readonly puddles: number;
  readonly names: PuddleNames;
}

/** A family on its way through the washes. */
interface Track {
  readonly work: FamilyWork;
  readonly indices: readonly number[];
  readonly mask: number;
  ground: Ground;
}

/**
 * The washes of one passage, solved over each other: families from light to dark, each wash over the
 * dried ones before it, the paper first. Mixes are of at most three paints in whole parts (sum at most
 * 8), loads continuous. A family keeps to the same three paints at most; one wash has at most
 * `puddles` puddles; no wash lightens anything. Lightness weighs most. What is gone through wholly: sets of
 * paints and splits of families; along the washes the choice is made wash by wash, light to dark.
 */
export async function layeredSolve(
  passage: string,
  input: SolveInput,
  checkpoint: Checkpoint,
): Promise<SolvedPassage> {
  const { slots, paints } = input;
  const painted = [...slots.keys()].filter((i) => {
    const slot = slots[i] as Slot;
    return slot.passage === passage && !slot.reserve && slot.share > 0;
  });
  const own = painted.map((i) => slots[i] as Slot);
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
  const options = puddleOptions(paints);
  const paper = groundOf(Float64Array.from(defaultPaper));
  const masks = await chooseFamilyPaints(
    works,
    options,
    paints.length,
    input.puddles,
    paper,
    checkpoint,
  );
  const tracks: Track[] = works.map((work, f) => ({
    work,
    indices: painted.filter((i) => (slots[i] as Slot).family === work.family),
    mask: masks[f] as number,
    ground: paper,
  }));
  const everyFamily = familiesOf(slots, passage);
  const solved: SolvedWash[] = [];
  for (const wash of bands) {
    await checkpoint(1);
    const active = tracks.filter((track) => track.work.washes[wash.wash - 1]);
    const { strokes } = sharePuddles(
      active.map(({ work, mask, ground }): ActiveFamily => ({ work, mask, ground })),
      options,
      wash.wash - 1,
      input.puddles,
      true,
    );
    solved.push(
      layWash(passage, wash, everyFamily, tracks, new Map(zip(active, strokes)), input, paper),
    );
  }
  return { passage, washes: solved };
}

function zip<A, B>(one: readonly A[], two: readonly B[]): (readonly [A, B])[] {
  return one.map((each, i) => [each, two[i] as B]);
}

const familiesOf = (slots: readonly Slot[], passage: string): number[] =>
  [...new Set(slots.filter((slot) => slot.passage === passage).map((slot) => slot.family))].sort(
    (a, b) => a - b,
  );

/** Lays one wash: makes its rows and moves the tracks' grounds on. */
function layWash(
  passage: string,
  bands: WashBands,
  families: readonly number[],
  tracks: readonly Track[],
  strokes: ReadonlyMap<Track, Stroke | null>,
  { slots, paints, names }: SolveInput,
  paper: Ground,
): SolvedWash {
  const mixes: Mix[] = [];
  const touched: number[] = [];
  const after: Lab[] = [];
  for (const family of families) {
    const place = { passage, wash: bands.wash, family };
    const track = tracks.find(({ work }) => work.family === family);
    const stroke = track ? strokes.get(track) : null;
    const goal = track?.work.washes[bands.wash - 1];
    if (!track || !stroke || !goal) {
      mixes.push(emptyRow(place, track?.ground ?? paper));
      continue;
    }
    const full = washedOver(stroke.option, stroke.load, track.ground);
    const weak =
      stroke.weakLoad === null ? null : washedOver(stroke.option, stroke.weakLoad, track.ground);
    const lightest = bands.weak[0] ?? bands.full[0] ?? 0;
    const weakBands = new Set<number>();
    for (const i of track.indices) {
      const { band } = slots[i] as Slot;
      if (band < lightest) continue;
      const thin = weak && bands.weak.includes(band);
      if (thin) weakBands.add(band);
      touched.push(i);
      after.push(labOfGround(thin ? weak : full));
    }
    const row = { place, stroke, goal, full, weak, weakBands: [...weakBands] };
    mixes.push(paintedRow(row, paints, names));
    track.ground = full;
  }
  return { ...bands, mixes, slots: touched, after };
}
