import type { Lab } from '../colour/lab.ts';
import type { PlanWishes } from '../decisions/plan-wishes.ts';
import type { Paint } from '../paint/paint.ts';
import type { LibraryMemo } from '../palette/library/mix-library.ts';
import {
  bestSetByTrait,
  isDistinctPalette,
  isMore,
  type SearchedCharacter,
} from '../palette/offers/best-set-by-trait.ts';
import {
  darkRemedy,
  describeLoss,
  paintLosses,
  valuesShort,
} from '../palette/offers/palette-gaps.ts';
import type {
  PaletteCharacter,
  PaletteOffer,
  PaletteOffers,
} from '../palette/offers/palette-offer.ts';
import { darkestBandLightness, paletteTargets, perPaint } from '../palette/search/cost-tables.ts';
import { scoreSet } from '../palette/search/score-set.ts';
import {
  openSearch,
  type PaletteSearch,
  paintsOf,
  preferredTies,
} from '../palette/search/search-palette.ts';
import type { Reading } from '../reading/reading.ts';
import type { Slot } from '../reading/slot.ts';
import { paletteEntries } from './palette-entries.ts';
import type { SolvedPassage } from './plan-facts.ts';
import { createPlanMemory, type PlanMemory } from './plan-memory.ts';
import { planQuality } from './reach/plan-quality.ts';
import { solvePalette } from './solve/solve-palette.ts';
import { type PlanCheckpoint, type PlannedSlots, plannedSlots } from './targets/planned-slots.ts';

/**
 * Mean CIEDE2000 over the painted area between the sheet after the last wash and the slots' targets. Slots no wash
 * touches are taken as `paper`.
 */
function meanFinalError(
  slots: readonly Slot[],
  passages: readonly SolvedPassage[],
  paper: Lab,
): number {
  const sheet = slots.map(() => paper);
  for (const { washes } of passages) {
    for (const wash of washes) {
      for (const [n, slot] of wash.slots.entries()) sheet[slot] = wash.after[n];
    }
  }
  return planQuality(slots, sheet).colour;
}

/** Where a palette is judged: the picture, what is planned of it, and the tables that hold the paints. */
interface OfferPlace {
  readonly reading: Reading;
  readonly planned: PlannedSlots;
  readonly search: PaletteSearch;
  /** L* the darks should have. */
  readonly wantedDark: number;
}

interface JudgedOffer {
  /** Those the washes need, and those she asked for. */
  readonly paints: readonly Paint[];
  /** L* of their darkest mix. */
  readonly reached: number;
  /** The cost of a set as in the search, but after the layered solve: lower is better. */
  readonly rating: number;
  readonly offered: (character: PaletteCharacter) => PaletteOffer;
}

/**
 * What some of the search's paints really do, wash over wash. All palettes are judged against the same targets,
 * those for the darkest her box reaches: one that can't go as deep is further off.
 */
async function scoreOffer(
  { reading, planned, search, wantedDark }: OfferPlace,
  paints: readonly Paint[],
  checkpoint: PlanCheckpoint,
): Promise<JudgedOffer> {
  const { facts } = await solvePalette(reading, planned, paints, checkpoint, createPlanMemory());
  const used = facts.paints.length > 0 ? facts.paints : paints;
  const members = used.map((paint) => search.paints.indexOf(paint)).sort((x, y) => x - y);
  const { cost, darkest } = scoreSet(search.tables, search.targets, members);
  const { paper } = planned.wide.range;
  const meanDifference = meanFinalError(planned.wide.slots, facts.passages, [paper, 0, 0]);
  const losses = paintLosses(search.tables, search.targets, members, reading.families);
  const entries = paletteEntries({ ...facts, paints: used });
  const offer = {
    cost,
    meanDifference,
    valuesShort: valuesShort(darkest, wantedDark),
    paints: members.map((member, n) => {
      const { id } = search.paints[member];
      const why = entries.find((entry) => entry.id === id)?.why ?? '';
      return { id, why, lostWithout: describeLoss(losses[n] ?? null) };
    }),
  };
  return {
    paints: used,
    reached: darkest,
    rating: meanDifference + perPaint * used.length,
    offered: (character) => ({ character, ...offer }),
  };
}

/** Near ties looked at wash over wash; palettes offered beside hers; what one of them may cost more. */
const mostTies = 4;
const mostOthers = 3;
const costsMore = 1;

/** A near tie is offered where wash over wash it is so much better, CIEDE2000. */
const betterBy = 0.1;

const characters: readonly SearchedCharacter[] = ['fewest', 'cleanest', 'granulating'];

/** Palettes solved in all, for the progress. */
const mostSolved = 1 + mostTies + mostOthers;

const samePaints = (one: readonly Paint[], two: readonly Paint[]): boolean =>
  one.length === two.length && one.every((paint) => two.includes(paint));

interface Offering {
  readonly reading: Reading;
  readonly planned: PlannedSlots;
  readonly wantedDark: number;
  readonly library: LibraryMemo;
  readonly judge: (place: OfferPlace, paints: readonly Paint[]) => Promise<JudgedOffer>;
  readonly checkpoint: PlanCheckpoint;
}

interface Found {
  readonly current: JudgedOffer;
  readonly others: readonly PaletteOffer[];
}

/** Her own choice: nothing is searched. */
async function judgeChosen(offering: Offering): Promise<JudgedOffer> {
  const { reading, planned, wantedDark, library, judge, checkpoint } = offering;
  const search = await openSearch(
    planned.wide.slots,
    planned.known,
    planned.wishes,
    (part) => checkpoint(0.1 + 0.1 * part, 'paints'),
    library,
  );
  return judge({ reading, planned, search, wantedDark }, search.paints);
}

/** Palettes found freely; the first is that of the plan where she has `chosen` none. */
async function findOthers(
  { reading, planned, wantedDark, library, judge, checkpoint }: Offering,
  chosen: JudgedOffer | null,
): Promise<Found> {
  const { chosen: _, ...wishes } = planned.wishes;
  const free = { ...planned, wishes };
  const search = await openSearch(
    planned.wide.slots,
    planned.known,
    wishes,
    (part) => checkpoint(0.1 + 0.3 * part, 'paints'),
    library,
  );
  const place = { reading, planned: free, search, wantedDark };
  const walked = (part: number) => checkpoint(0.4 + 0.1 * part, 'paints');
  const ties: JudgedOffer[] = [];
  for (const set of preferredTies(search).slice(0, mostTies)) {
    ties.push(await judge(place, paintsOf(search, set)));
  }
  const current = chosen ?? ties[0];
  const nearest = ties.reduce((best, tie) => (tie.rating < best.rating ? tie : best));
  const worthIt = chosen !== null || nearest.rating < current.rating - betterBy;
  const offers = worthIt && !samePaints(nearest.paints, current.paints) ? [nearest] : [];
  const others = offers.map((each) => each.offered('nearest'));
  const base = (chosen ? nearest : current).paints;
  const seen = [base, current.paints, ...offers.map(({ paints }) => paints)];
  for (const character of characters) {
    if (others.length === mostOthers) break;
    const atMost = (search.ties[0]?.cost ?? 0) + costsMore;
    const set = await bestSetByTrait(character, seen, atMost, search, walked);
    if (!set) continue;
    // Once solved it may turn out that some paint is not needed.
    const judged = await judge(place, paintsOf(search, set));
    const differs = seen.every((one) => isDistinctPalette(judged.paints, one));
    if (!differs || !isMore(character, judged.paints, base)) continue;
    others.push(judged.offered(character));
    seen.push(judged.paints);
  }
  return { current, others };
}

/**
 * The palette of the plan for the same reading and wishes, judged wash over wash, and up to three others: one
 * as good that comes out better once wash lies over wash, and palettes that cost at most 1 more and have fewer
 * paints, less against them, or more granulation. Each differs from every other by two paints or is smaller.
 * Deterministic. Null where there is nothing to paint. Throws as `buildPlan`. `memory` spares mixes worked out before.
 */
export async function paletteOffers(
  reading: Reading,
  asked: PlanWishes,
  checkpoint: PlanCheckpoint,
  memory: PlanMemory = createPlanMemory(),
): Promise<PaletteOffers | null> {
  const planned = await plannedSlots(reading, asked, checkpoint, memory.darkest);
  if (paletteTargets(planned.wide.slots).length === 0) return null;
  let solved = 0;
  const offering: Offering = {
    reading,
    planned,
    wantedDark: darkestBandLightness(paletteTargets(reading.slots)),
    library: memory.library,
    async judge(place, paints) {
      const from = 0.5 + (0.4 * solved) / mostSolved;
      solved += 1;
      return scoreOffer(place, paints, (part, stage) =>
        checkpoint(from + ((2 * part - 1) * 0.4) / mostSolved, stage),
      );
    },
    checkpoint,
  };
  const { wishes, known } = planned;
  const chosen = wishes.chosen?.length ? await judgeChosen(offering) : null;
  const { current, others } =
    chosen && wishes.colours?.mode === 'one'
      ? { current: chosen, others: [] }
      : await findOthers(offering, chosen);
  const { paints, reached } = current;
  const { wantedDark } = offering;
  const remedy = await darkRemedy(paints, reached, wantedDark, known, wishes.box, (part) =>
    checkpoint(0.9 + 0.1 * part, 'paints'),
  );
  return { current: current.offered(chosen ? 'chosen' : 'nearest'), others, remedy };
}
