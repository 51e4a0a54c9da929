import type { PlanWishes } from '../decisions/plan-wishes.ts';
import type { Paint } from '../paint/paint.ts';
import {
  bestSetByTrait,
  isDistinctPalette,
  isMore,
  type SearchedCharacter,
} from '../palette/offers/best-set-by-trait.ts';
import { darkRemedy, paintLosses, valuesShort } from '../palette/offers/palette-gaps.ts';
import type {
  PaletteCharacter,
  PaletteOffer,
  PaletteOffers,
} from '../palette/offers/palette-offer.ts';
import { darkestBandLightness, paletteTargets } from '../palette/search/palette-targets.ts';
import { scoreSet } from '../palette/search/score-set.ts';
import {
  nearTie,
  openSearch,
  type PaletteSearch,
  paintsOf,
} from '../palette/search/search-palette.ts';
import type { Reading } from '../reading/reading.ts';
import type { Slot } from '../reading/slot.ts';
import { paletteEntries } from './palette-entries.ts';
import { createPlanMemory, type PlanMemory } from './plan-memory.ts';
import { choosePalette } from './solve/choose-palette.ts';
import { meanFinalError, ratePalette } from './solve/rate-palette.ts';
import { solvePalette } from './solve/solve-palette.ts';
import { type PlanCheckpoint, type PlannedSlots, plannedSlots } from './targets/planned-slots.ts';

/** Where a palette is judged: the picture, what is planned of it, and the tables that hold the paints. */
interface OfferPlace {
  readonly reading: Reading;
  readonly planned: PlannedSlots;
  readonly search: PaletteSearch;
  /** What all are to come near to. */
  readonly slots: readonly Slot[];
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
 * What some of the search's paints really do, wash over wash. All palettes are judged against the same targets, those
 * the palette found freely was searched for: one that can't go as deep is further off.
 */
async function scoreOffer(
  { reading, planned, search, slots, wantedDark }: OfferPlace,
  paints: readonly Paint[],
  checkpoint: PlanCheckpoint,
): Promise<JudgedOffer> {
  const { facts } = await solvePalette(reading, planned, paints, checkpoint, createPlanMemory());
  const used = facts.paints.length > 0 ? facts.paints : paints;
  const members = used.map((paint) => search.paints.indexOf(paint)).sort((x, y) => x - y);
  const { cost, darkest } = scoreSet(search.tables, search.targets, members);
  const { paper } = planned.wide.range;
  const meanDifference = meanFinalError(slots, facts, paper);
  const losses = paintLosses(search.tables, search.targets, members, reading.families);
  const entries = paletteEntries({ ...facts, paints: used });
  const offer = {
    cost,
    meanDifference,
    valuesShort: valuesShort(darkest, wantedDark),
    paints: members.map((member, n) => {
      const { id } = search.paints[member];
      const why = entries.find((entry) => entry.id === id)?.why ?? '';
      return { id, why, lostWithout: losses[n] ?? null };
    }),
  };
  return {
    paints: used,
    reached: darkest,
    rating: ratePalette(search, { ...facts, paints: used }, planned.wide),
    offered: (character) => ({ character, ...offer }),
  };
}

/** Palettes offered beside hers. */
const mostOthers = 3;

const characters: readonly SearchedCharacter[] = ['fewest', 'cleanest', 'granulating'];

/** Palettes solved in all, for the progress. */
const mostSolved = 2 + mostOthers;

const samePaints = (one: readonly Paint[], two: readonly Paint[]): boolean =>
  one.length === two.length && one.every((paint) => two.includes(paint));

type Judge = (place: OfferPlace, paints: readonly Paint[]) => Promise<JudgedOffer>;

/**
 * Palettes that cost at most a tie more than the best and have more of a character than `base`, the one found freely,
 * none of them better than it wash over wash: the choice is that of the search, not a chance of one solve. `shown` are
 * those before her already.
 */
async function findOthers(
  place: OfferPlace,
  base: JudgedOffer,
  shown: readonly JudgedOffer[],
  judge: Judge,
  checkpoint: PlanCheckpoint,
): Promise<PaletteOffer[]> {
  const { search } = place;
  const others: PaletteOffer[] = [];
  const seen = [base, ...shown].map(({ paints }) => paints);
  for (const character of characters) {
    if (shown.length + others.length > mostOthers) break;
    const atMost = search.ties[0].cost + nearTie;
    const set = await bestSetByTrait(character, seen, atMost, search, (part) =>
      checkpoint(0.5 + 0.1 * part, 'paints'),
    );
    if (!set) continue;
    // Once solved it may turn out that some paint is not needed.
    const judged = await judge(place, paintsOf(search, set));
    const differs = seen.every((one) => isDistinctPalette(judged.paints, one));
    if (!differs || !isMore(character, judged.paints, base.paints)) continue;
    if (judged.rating < base.rating) continue;
    others.push(judged.offered(character));
    seen.push(judged.paints);
  }
  return others;
}

/**
 * The palette of the plan for the same reading and wishes, judged wash over wash, and up to three others: what the
 * search finds, where she has chosen her own, and palettes that cost at most a tie more and have fewer paints, less
 * against them, or more granulation. Each differs from every other by two paints or is smaller; none is better than the
 * one found. Deterministic. Null where there is nothing to paint. Throws as `buildPlan`. `memory` spares what was
 * worked out before.
 */
export async function paletteOffers(
  reading: Reading,
  asked: PlanWishes,
  checkpoint: PlanCheckpoint,
  memory: PlanMemory = createPlanMemory(),
): Promise<PaletteOffers | null> {
  const planned = await plannedSlots(reading, asked, checkpoint, memory.darkest);
  if (paletteTargets(planned.wide.slots).length === 0) return null;
  const wantedDark = darkestBandLightness(paletteTargets(reading.slots));
  let solved = 0;
  const judge: Judge = (place, paints) => {
    const from = 0.6 + (0.3 * solved) / mostSolved;
    solved += 1;
    return scoreOffer(place, paints, (part, stage) =>
      checkpoint(from + ((2 * part - 1) * 0.3) / mostSolved, stage),
    );
  };
  const { wishes, known } = planned;
  const { chosen, present, ...freely } = wishes;
  const isChosen = chosen !== undefined && chosen.length > 0;
  const isOne = isChosen && wishes.colours?.mode === 'one';
  const free = isChosen && !isOne ? { ...planned, wishes: freely } : planned;
  const found = await choosePalette(reading, free, checkpoint, memory);
  const place = { reading, planned: free, wantedDark, ...found };
  const base = await judge(place, found.paints);
  let current = base;
  if (free !== planned) {
    // What she chose need not be among the paints searched freely.
    const hers = await openSearch(
      found.slots,
      known,
      wishes,
      (part) => checkpoint(0.5 + 0.1 * part, 'paints'),
      memory.library,
    );
    current = await judge({ ...place, planned, search: hers }, hers.paints);
  }
  const nearest = samePaints(base.paints, current.paints) ? [] : [base];
  const others = isOne
    ? []
    : await findOthers(place, base, [current, ...nearest], judge, checkpoint);
  const { paints, reached } = current;
  const remedy = await darkRemedy(paints, reached, wantedDark, known, wishes.box, (part) =>
    checkpoint(0.9 + 0.1 * part, 'paints'),
  );
  return {
    current: current.offered(isChosen ? 'chosen' : 'nearest'),
    others: [...nearest.map((each) => each.offered('nearest')), ...others],
    remedy,
  };
}
