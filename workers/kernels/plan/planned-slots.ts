import type { Paint } from '../../../app/model/paint.ts';
import type { PlanWishes } from '../../../app/model/plan-wishes.ts';
import type { Reading, ToneRange } from '../../../app/model/reading.ts';
import type { Slot } from '../../../app/model/slot.ts';
import { retargeted, toneRange } from '../../../app/model/tone-range.ts';
import { defaultPaperLab } from '../optics/default-paper.ts';
import { knownPaints } from '../optics/paint-box.ts';
import { darkestInSteps } from '../palette/darkest-of.ts';
import { paintsAllowed } from '../palette/paints-allowed.ts';
import { lostSidesTogether } from './lost-sides.ts';
import { paintTogether } from './paint-together.ts';
import type { PlanCheckpoint } from './plan-checkpoint.ts';
import { wishedColours } from './wished-colours.ts';
import { wishedPalette } from './wished-palette.ts';

/** A range, and the reading's slots with their targets in it. */
export interface RangedSlots {
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
function boxDarkest(wishes: PlanWishes, checkpoint: PlanCheckpoint): Promise<number> {
  const { chosen, box, ownPaints, ...wanted } = wishes;
  const own = box && { box };
  const { paints } = paintsAllowed(
    knownPaints(ownPaints),
    chosen?.length ? { ...own } : { ...own, ...wanted },
  );
  return darkestInSteps(paints, (part) => checkpoint(0.1 * part, 'paints'));
}

/** The slots of a reading as she wants them painted. Takes the first tenth of the planning. */
export async function plannedSlots(
  reading: Reading,
  asked: PlanWishes,
  checkpoint: PlanCheckpoint,
): Promise<PlannedSlots> {
  const wishes = wishedPalette(asked);
  const known = knownPaints(wishes.ownPaints);
  const asPainted = paintTogether(reading, wishes.passages);
  const forDarkest = (darkest: number): RangedSlots => {
    const { mode, lo, hi } = reading.range;
    const range = toneRange(mode, lo, hi, darkest, defaultPaperLab[0]);
    const plain = lostSidesTogether(retargeted(asPainted, range), reading);
    return { range, slots: wishedColours(plain, reading.families, wishes.colours, known) };
  };
  const wide = forDarkest(await boxDarkest(wishes, checkpoint));
  return { wishes, known, wide, forDarkest };
}
