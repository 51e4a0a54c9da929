import type { PlanWishes } from '../../decisions/plan-wishes.ts';
import { paintsWished } from '../../decisions/wished-colours.ts';
import { proposedPaletteSize } from '../../limits.ts';
import type { LastAnswers } from '../../numeric/memo.ts';
import { defaultPaperLab } from '../../paint/colour-of-washes.ts';
import type { Paint } from '../../paint/paint.ts';
import { knownPaints } from '../../paint/paint-box.ts';
import { darkestInSteps } from '../../palette/library/mix-library.ts';
import { paintsAllowed } from '../../palette/paints-allowed.ts';
import type { ProgressPhase, Reading, ToneRange } from '../../reading/reading.ts';
import type { Slot } from '../../reading/slot.ts';
import { retargeted, toneRange } from '../../reading/tone-range.ts';
import { mergePassages, mergeTargetsAcrossLostEdges, wishedColours } from './adjust-targets.ts';

/** Awaited between pieces of some milliseconds; throws to stop. part: 0..1 of the planning. */
export type PlanCheckpoint = (part: number, stage: ProgressPhase) => Promise<void>;

const joined = (one: readonly string[] = [], two: readonly string[] = []): string[] => [
  ...new Set([...one, ...two]),
];

/**
 * Wishes for the palette that go with her colours: one paint is the whole palette; paints that give the
 * families their hues are in it, others only come in to reach the values. What she left out for good and
 * now wants as a hue is in: the later word counts.
 */
export function wishedPalette(wishes: PlanWishes): PlanWishes {
  const paints = paintsWished(wishes.colours);
  if (paints.length === 0) return wishes;
  const exclude = (wishes.exclude ?? []).filter((id) => !paints.includes(id));
  if (wishes.colours?.mode === 'one') {
    return { ...wishes, chosen: paints, must: [], exclude };
  }
  const must = joined(wishes.must, paints);
  return {
    ...wishes,
    must,
    exclude,
    ...(wishes.chosen?.length && { chosen: joined(wishes.chosen, paints) }),
    paletteSize: Math.max(wishes.paletteSize ?? proposedPaletteSize, must.length),
  };
}

/** A range, and the reading's slots with their targets in it. */
interface RangedSlots {
  readonly range: ToneRange;
  readonly slots: readonly Slot[];
}

/** What a plan, or a palette alone, starts from. */
export interface PlannedSlots {
  /** Hers, with what her colours ask of the palette. */
  readonly wishes: PlanWishes;
  readonly known: readonly Paint[];
  /** While the palette is being searched: for the darkest her box reaches. */
  readonly wide: RangedSlots;
  /** For paints that reach this L*. */
  forDarkest(darkest: number): RangedSlots;
}

/** L* of the darkest her box can do; whites and blacks count only if asked for. */
function boxDarkest(
  wishes: PlanWishes,
  checkpoint: PlanCheckpoint,
  known: LastAnswers<number>,
): Promise<number> {
  const { chosen, box, ownPaints, strengths, ...wanted } = wishes;
  const own = box && { box };
  const { paints } = paintsAllowed(
    knownPaints(ownPaints, strengths),
    chosen?.length ? { ...own } : { ...own, ...wanted },
  );
  return darkestInSteps(paints, (part) => checkpoint(0.1 * part, 'paints'), known);
}

/**
 * The slots of a reading as she wants them painted. Takes the first tenth of the planning, unless `darkest` knows
 * what her box can do.
 */
export async function plannedSlots(
  reading: Reading,
  asked: PlanWishes,
  checkpoint: PlanCheckpoint,
  darkest: LastAnswers<number>,
): Promise<PlannedSlots> {
  const wishes = wishedPalette(asked);
  const known = knownPaints(wishes.ownPaints, wishes.strengths);
  const asPainted = mergePassages(reading, wishes.passages);
  const forDarkest = (darkest: number): RangedSlots => {
    const { mode, lo, hi } = reading.range;
    const range = toneRange(mode, lo, hi, darkest, defaultPaperLab[0]);
    const plain = mergeTargetsAcrossLostEdges(retargeted(asPainted, range), reading);
    return { range, slots: wishedColours(plain, reading.families, wishes.colours, known) };
  };
  const wide = forDarkest(await boxDarkest(wishes, checkpoint, darkest));
  return { wishes, known, wide, forDarkest };
}
