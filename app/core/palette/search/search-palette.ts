import type { PlanWishes } from '../../decisions/plan-wishes.ts';
import type { Paint } from '../../paint/paint.ts';
import type { Slot } from '../../reading/slot.ts';
import type { Checkpoint } from '../checkpoint.ts';
import { type LibraryMemo, mostSearched } from '../library/mix-library.ts';
import { paintsAllowed } from '../paints-allowed.ts';
import { branchAndBound } from './branch-and-bound.ts';
import { CostTables } from './cost-tables.ts';
import { priceOf } from './paint-price.ts';
import { darkestBandLightness, type PaletteTarget, paletteTargets } from './palette-targets.ts';
import { greedySearch, scoreSet } from './score-set.ts';
import type { FoundSet, SetWishes } from './set-walk.ts';

/** Sets whose costs differ by no more than this are as good as each other: no hand is surer (own). */
export const nearTie = 1;

/** Ties that are kept, those of least cost (own). */
export const mostTies = 12;

/**
 * Paints a shortlist holds at most: on six pictures the best set of all 105 paints cost at most 0.006 more than with a
 * list of 52, that of 40 at most 0.004 (own).
 */
const mostShortlisted = 30;

/** Places a shortlist leaves for paints that turn out to better what is found among it (own). */
const placesLeft = 5;

/** Less than this, in cost, is no reason to search again (own). */
const noGain = 0.02;

/** A search with its tables built and the sets of least cost found; further questions to it are quick. */
export interface PaletteSearch {
  /** What may be chosen from; sets hold indices into it. */
  readonly paints: readonly Paint[];
  readonly tables: CostTables;
  readonly targets: readonly PaletteTarget[];
  readonly wishes: SetWishes;
  /** The set of least cost, then those as good as it, rising in cost. */
  readonly ties: readonly FoundSet[];
}

/** Paints chosen among those searched. */
export interface ChosenPalette {
  readonly paints: readonly Paint[];
  /** The search they were found in, for more questions to it. */
  readonly search: PaletteSearch;
  /** Whose targets were searched for: those for paints about as dark as these. */
  readonly slots: readonly Slot[];
}

export const paintsOf = ({ paints }: PaletteSearch, { members }: FoundSet): Paint[] =>
  members.map((n) => paints[n]);

const pricesOf = (paints: readonly Paint[], { box }: PlanWishes): number[] =>
  paints.map((paint) => priceOf(paint, box !== undefined));

/**
 * Places of the `most` paints, of many, that a palette of at most `size` can best be built around, those of `must` among them;
 * in the order given. A paint ranks by the least cost found with it in the set, by mixes of two.
 */
export function shortlist(
  pairs: CostTables,
  targets: readonly PaletteTarget[],
  { must, size }: Pick<SetWishes, 'must' | 'size'>,
  most: number,
): number[] {
  const costWith = (paint: number): number => {
    if (must.includes(paint)) return Number.NEGATIVE_INFINITY;
    const start = [...must, paint].sort((one, two) => one - two);
    return must.length < size ? greedySearch(pairs, targets, start, size).cost : 0;
  };
  const rank = Array.from(pairs.prices, (_, paint) => costWith(paint));
  return [...rank.keys()]
    .sort((one, two) => rank[one] - rank[two] || one - two)
    .slice(0, Math.max(most, must.length))
    .sort((one, two) => one - two);
}

/** The sets of least cost among these paints. */
async function searchAmong(
  some: readonly Paint[],
  { must, size }: ReturnType<typeof paintsAllowed>,
  { asked, targets, darkest, memo }: Sought,
  checkpoint: Checkpoint,
): Promise<PaletteSearch> {
  const { paints, groups } = await memo.libraryOf(some, (part) => checkpoint(0.5 * part));
  const prices = pricesOf(paints, asked);
  const known = memo.costsFor(targets.map(({ lab }) => lab));
  const filling = (part: number) => checkpoint(0.5 + 0.4 * part);
  const tables = await CostTables.of({ paints, groups }, targets, prices, filling, known);
  const wishes = { size, must: must.map((paint) => paints.indexOf(paint)), darkest };
  const ties = await branchAndBound(nearTie, mostTies, tables, targets, wishes, (part) =>
    checkpoint(0.9 + 0.1 * part),
  );
  return { paints, tables, targets, wishes, ties };
}

interface Sought {
  readonly asked: PlanWishes;
  readonly targets: readonly PaletteTarget[];
  /** L* a set has to reach, if any does. */
  readonly darkest: number;
  readonly memo: LibraryMemo;
}

/**
 * As `searchAmong`, of more paints than can be searched exactly: of a shortlist, and once more with those paints that
 * better the set found, each tried in it by itself.
 */
async function searchMany(
  allowed: ReturnType<typeof paintsAllowed>,
  sought: Sought,
  most: number,
  checkpoint: Checkpoint,
): Promise<PaletteSearch> {
  const { paints, must, size } = allowed;
  const { asked, targets, memo } = sought;
  const stage = (from: number, to: number) => (part: number) =>
    checkpoint(from + (to - from) * part);
  const pairs = await memo.pairsOf(paints, stage(0, 0.15));
  const tables = await CostTables.of(pairs, targets, pricesOf(paints, asked), stage(0.15, 0.2));
  const places = must.map((paint) => paints.indexOf(paint));
  const few = shortlist(
    tables,
    targets,
    { must: places, size },
    Math.min(most, mostShortlisted) - placesLeft,
  );
  const listed = few.map((n) => paints[n]);
  const first = await searchAmong(listed, allowed, sought, stage(0.2, 0.5));
  const [best] = first.ties;
  const found = paintsOf(first, best);
  const others = paints.filter((paint) => !listed.includes(paint));
  const gains: { paint: Paint; gain: number }[] = [];
  for (const [n, paint] of others.entries()) {
    await checkpoint(0.5 + (0.2 * n) / others.length);
    const tried = await searchAmong([...found, paint], allowed, sought, async () => {});
    gains.push({ paint, gain: best.cost - tried.ties[0].cost });
  }
  const more = gains
    .filter(({ gain }) => gain > noGain)
    .sort((one, two) => two.gain - one.gain)
    .slice(0, placesLeft)
    .map(({ paint }) => paint);
  return more.length > 0
    ? searchAmong([...listed, ...more], allowed, sought, stage(0.7, 1))
    : first;
}

/** What else a search may be told. */
interface SearchLimits {
  /** L* a set has to reach where that is darker than the darkest band, if any does. */
  readonly dark?: number;
  /** Paints that are searched exactly, at most. */
  readonly most?: number;
}

/**
 * The palettes of least cost for the painted slots' targets, among all sets of at most `asked.paletteSize` of the
 * paints her wishes allow (of a shortlist of them where they are very many), with every mix of at most three paints in
 * whole parts (sum at most 8), thinned to the lightness wanted, as a single wash on white paper. Washes over washes
 * come in only with the layered solve. A set has to reach the darkest band, if any does. `memo` keeps the mixes for
 * the next search. Throws RangeError as `paintsAllowed`.
 */
export async function openSearch(
  slots: readonly Slot[],
  known: readonly Paint[],
  asked: PlanWishes,
  checkpoint: Checkpoint,
  memo: LibraryMemo,
  { dark = 100, most = mostSearched }: SearchLimits = {},
): Promise<PaletteSearch> {
  const allowed = paintsAllowed(known, asked);
  const targets = paletteTargets(slots);
  const darkest = Math.min(dark, darkestBandLightness(targets));
  const sought = { asked, targets, darkest, memo };
  return allowed.paints.length > most
    ? searchMany(allowed, sought, most, checkpoint)
    : searchAmong(allowed.paints, allowed, sought, checkpoint);
}

/**
 * The set of these paints among those searched, where her wishes allow it and it costs at most `nearTie` more than the
 * best: no reason to buy others. Null else.
 */
export function setStillGood(
  { paints, tables, targets, wishes, ties }: PaletteSearch,
  ids: readonly string[],
): FoundSet | null {
  const members = ids.map((id) => paints.findIndex((paint) => paint.id === id));
  const allowed = wishes.must.every((paint) => members.includes(paint));
  if (members.length === 0 || members.length > wishes.size || members.includes(-1) || !allowed)
    return null;
  members.sort((one, two) => one - two);
  const { cost, darkest } = scoreSet(tables, targets, members);
  return cost <= ties[0].cost + nearTie ? { members, cost, darkest } : null;
}
