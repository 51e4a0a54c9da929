import { type PlanWishes, wholeNumber } from '../../decisions/plan-wishes.ts';
import { usualPaper } from '../../drying/paper-choice.ts';
import { roomWeather } from '../../drying/weather.ts';
import { mostPuddles, mostWashes, proposedPuddles, proposedWashes } from '../../limits.ts';
import { opticsKey, type Paint } from '../../paint/paint.ts';
import { darkestOf } from '../../palette/library/mix-library.ts';
import { firstWashIsWet } from '../../reading/edges/slot-borders.ts';
import type { Reading, ToneRange } from '../../reading/reading.ts';
import type { Slot } from '../../reading/slot.ts';
import { reservesOf } from '../../reading/tone-range.ts';
import { chooseWhiteWay, isTedious } from '../../reading/whites/whites.ts';
import type { PlanFacts, SolvedPassage } from '../plan-facts.ts';
import { createPlanMemory, type PlanMemory } from '../plan-memory.ts';
import type { PlanCheckpoint, PlannedSlots } from '../targets/planned-slots.ts';
import { PuddleNames } from './lay-wash.ts';
import { puddleOptions } from './puddle-options.ts';
import { solvePassage } from './solve-passage.ts';

const names = (paints: readonly Paint[]): string[] => paints.map(opticsKey);

/** Cache key of a palette search: everything its result depends on. */
export function paletteAsked(
  slots: readonly Slot[],
  known: readonly Paint[],
  wishes: PlanWishes,
): string {
  const { box, colours, paletteSize, must, exclude, chosen, present, puddlesPerWash } = wishes;
  const wanted = [box, colours, paletteSize, must, exclude, chosen, present, puddlesPerWash];
  return JSON.stringify([slots, names(known), wanted]);
}

/** Cache key of the solved washes: everything their result depends on. */
export const passagesAsked = (
  slots: readonly Slot[],
  paints: readonly Paint[],
  { washes, puddlesPerWash }: PlanWishes,
): string => JSON.stringify([slots, names(paints), washes, puddlesPerWash]);

/** Drops paints that no mix uses or meets, unless she asked for them. */
export function dropUnusedPaints(
  paints: readonly Paint[],
  passages: readonly SolvedPassage[],
  wishes: PlanWishes,
): Paint[] {
  const asked = new Set([...(wishes.must ?? []), ...(wishes.chosen ?? [])]);
  const used = new Set(
    passages.flatMap((passage) =>
      passage.washes.flatMap((wash) =>
        wash.mixes.flatMap(({ parts, meets }) =>
          [...parts, ...(meets?.parts ?? [])].map(({ paint }) => paint),
        ),
      ),
    ),
  );
  return paints.filter((paint) => used.has(paint.id) || asked.has(paint.id));
}

/**
 * Chooses again how whites are kept where `slots` join ground and subject into one passage: the reading chose for the
 * first wash of each passage alone, and a wet joint wash would drown whites that must then be masked (R1). Ways she
 * decided stay; a sheet of separate passages is returned unchanged.
 */
export function maskWhitesForJointWash(reading: Reading, slots: readonly Slot[]): Reading {
  const { whites, borders } = reading;
  const together = slots.some(({ passage }, i) => passage !== reading.slots[i]?.passage);
  if (!whites || !together) return reading;
  const painted = slots.flatMap(({ reserve, share }, i) => (reserve || share <= 0 ? [] : [i]));
  if (!firstWashIsWet({ borders }, painted)) return reading;
  const alike = whites.filter(({ shortSideMm }) => isTedious(shortSideMm)).length;
  const ways = whites.map((white) =>
    white.decided || white.way !== 'round'
      ? white
      : { ...white, ...chooseWhiteWay(white, { wet: true, alike }) },
  );
  return { ...reading, whites: ways };
}

/** Every passage solved wash over wash; those without anything to paint are left out. The second half of the planning. */
export async function solvePassages(
  facts: Pick<PlanFacts, 'slots' | 'paints'>,
  wishes: PlanWishes,
  checkpoint: PlanCheckpoint,
  memory: PlanMemory = createPlanMemory(),
): Promise<SolvedPassage[]> {
  const passages = [...new Set(facts.slots.map((slot) => slot.passage))];
  const asking = JSON.stringify(names(facts.paints));
  const options =
    memory.options.get(asking) ??
    (await puddleOptions(facts.paints, () => checkpoint(0.5, 'washes'), memory.mixes));
  memory.options.keep(asking, options);
  const input = {
    ...facts,
    options,
    washes: wholeNumber(wishes.washes ?? proposedWashes, 1, mostWashes, 'Washes over each other'),
    puddles: wholeNumber(
      wishes.puddlesPerWash ?? proposedPuddles,
      1,
      mostPuddles,
      'Puddles in one wash',
    ),
    names: new PuddleNames(),
  };
  const solved: SolvedPassage[] = [];
  for (const [n, passage] of passages.entries()) {
    solved.push(
      await solvePassage(passage, input, (part) =>
        checkpoint(0.5 + (0.5 * (n + Math.min(1, part))) / passages.length, 'washes'),
      ),
    );
  }
  return solved.filter((passage) => passage.washes.length > 0);
}

export interface SolvedPalette {
  /** L* of the darkest single wash of these paints. */
  readonly reached: number;
  readonly range: ToneRange;
  /** Its paints are those some mix needs, and those she asked for. */
  readonly facts: PlanFacts;
}

/** What these paints do for the reading, wash over wash, with targets for the darkest they reach. */
export async function solvePalette(
  reading: Reading,
  { wishes, forDarkest }: PlannedSlots,
  paints: readonly Paint[],
  checkpoint: PlanCheckpoint,
  memory: PlanMemory,
): Promise<SolvedPalette> {
  const reached = darkestOf(paints);
  const { range, slots } = forDarkest(reached);
  const asking = passagesAsked(slots, paints, wishes);
  const passages =
    memory.passages.get(asking) ??
    (await solvePassages({ slots, paints }, wishes, checkpoint, memory));
  memory.passages.keep(asking, passages);
  const facts = {
    reading: maskWhitesForJointWash(reading, slots),
    slots,
    reserves: reservesOf(slots),
    paints: dropUnusedPaints(paints, passages, wishes),
    palette: paints,
    passages,
    ...(wishes.passages && { passagesWish: wishes.passages }),
    weather: wishes.weather ?? roomWeather,
    paper: wishes.paper ?? usualPaper,
    dryingModel: memory.dryingModel,
  };
  return { reached, range, facts };
}

/** The same paints solved for a number of washes over each other; every number once. */
export type WashSolver = (washes: number) => Promise<SolvedPalette>;

export function washSolver(
  reading: Reading,
  planned: PlannedSlots,
  paints: readonly Paint[],
  checkpoint: PlanCheckpoint,
  memory: PlanMemory,
): WashSolver {
  const solved = new Map<number, Promise<SolvedPalette>>();
  return (washes) => {
    const known = solved.get(washes);
    if (known) return known;
    const wishes = { ...planned.wishes, washes };
    const solving = solvePalette(reading, { ...planned, wishes }, paints, checkpoint, memory);
    solved.set(washes, solving);
    return solving;
  };
}
