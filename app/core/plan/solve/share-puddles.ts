import type { ActiveFamily, FamilyWash, Precision, WashFitter } from './fit-family-wash.ts';
import type { PuddleOption } from './puddle-options.ts';

/**
 * All ways to put items 0..count-1 into at most `most` groups that are not empty, each group as bits.
 * For 6 items and 3 groups: 122.
 */
export function partitions(count: number, most: number): number[][] {
  const found: number[][] = [];
  const place = (item: number, groups: number[]): void => {
    if (item === count) {
      found.push(groups);
      return;
    }
    for (let g = 0; g < groups.length; g++) {
      place(
        item + 1,
        groups.map((bits, i) => (i === g ? bits | (1 << item) : bits)),
      );
    }
    if (groups.length < most) place(item + 1, [...groups, 1 << item]);
  };
  place(0, []);
  return found;
}

/** The items of a group given as bits. */
export function itemsOf(bits: number): number[] {
  const items: number[] = [];
  for (let i = 0, left = bits; left !== 0; i++, left >>>= 1) if (left & 1) items.push(i);
  return items;
}

/** What is asked of it here. */
type PuddleFitter = Pick<WashFitter, 'options' | 'estimateCosts' | 'fit'>;

interface SharedWash {
  readonly cost: number;
  /** One entry per family; null where every puddle would lighten the sheet. */
  readonly familyWashes: readonly (FamilyWash | null)[];
}

/** Options of least estimated cost that are then fitted exactly. */
const optionsFittedExactly = 10;

/** Cost of leaving a family out of a wash: larger than any colour difference. */
export const leftOut = 1000;

interface Puddle {
  readonly cost: number;
  readonly familyWashes: readonly (FamilyWash | null)[];
}

/** Estimated costs of every option for one family, and the options that it may have at all, rising. */
interface OptionCosts {
  readonly row: Float64Array;
  readonly possible: readonly number[];
}

function optionCosts(row: Float64Array): OptionCosts {
  const possible: number[] = [];
  for (let n = 0; n < row.length; n++) if (Number.isFinite(row[n])) possible.push(n);
  return { row, possible };
}

/** Indices of the options with the least estimated cost for families, at least one, that share one puddle; best first. */
function nearest(costs: readonly OptionCosts[], count: number): number[] {
  const best: { n: number; cost: number }[] = [];
  for (const n of costs[0].possible) {
    let cost = 0;
    for (const { row } of costs) cost += row[n];
    if (!Number.isFinite(cost)) continue;
    if (best.length === count && cost >= best[count - 1].cost) continue;
    let index = best.length;
    while (index > 0 && best[index - 1].cost > cost) index--;
    best.splice(index, 0, { n, cost });
    if (best.length > count) best.pop();
  }
  return best.map(({ n }) => n);
}

/** A family meets the same option in many groups of one wash: it is fitted to it once. */
function fittingOnce(fitter: PuddleFitter): PuddleFitter {
  const fits = new Map<ActiveFamily, Map<PuddleOption, ReturnType<PuddleFitter['fit']>>>();
  return {
    options: fitter.options,
    estimateCosts: (family, wash) => fitter.estimateCosts(family, wash),
    fit(option, family, wash, precision) {
      const known = fits.get(family) ?? new Map<PuddleOption, ReturnType<PuddleFitter['fit']>>();
      fits.set(family, known);
      const before = known.get(option);
      if (before !== undefined) return before;
      const fitted = fitter.fit(option, family, wash, precision);
      known.set(option, fitted);
      return fitted;
    },
  };
}

/** The best puddle for a group of families that share it, each at its own load. */
function puddleFor(
  group: readonly ActiveFamily[],
  costs: readonly OptionCosts[],
  fitter: PuddleFitter,
  wash: number,
  precision: Precision,
): Puddle {
  let best: Puddle = { cost: leftOut * group.length, familyWashes: group.map(() => null) };
  for (const n of nearest(costs, precision === 'exact' ? optionsFittedExactly : 1)) {
    const familyWashes: (FamilyWash | null)[] = [];
    let cost = 0;
    for (const active of group) {
      const judged = fitter.fit(fitter.options[n], active, wash, precision);
      cost += judged?.cost ?? 0;
      if (cost >= best.cost) break; // no family makes it cheaper
      familyWashes.push(judged?.familyWash ?? null);
    }
    if (cost < best.cost) best = { cost, familyWashes };
  }
  return best;
}

/** Splits of least estimated cost whose options are then fitted exactly. */
const splitsFittedExactly = 4;

/** The splits of least estimated cost. */
function likelySplits(
  splits: readonly number[][],
  costs: readonly OptionCosts[],
): readonly number[][] {
  if (splits.length <= splitsFittedExactly) return splits;
  const known = new Map<number, number>();
  const costOf = (bits: number): number => {
    const before = known.get(bits);
    if (before !== undefined) return before;
    const rows = itemsOf(bits).map((i) => costs[i]);
    const [n] = nearest(rows, 1);
    const cost =
      n === undefined ? leftOut * rows.length : rows.reduce((all, { row }) => all + row[n], 0);
    known.set(bits, cost);
    return cost;
  };
  return splits
    .map((split) => ({ split, cost: split.reduce((all, bits) => all + costOf(bits), 0) }))
    .sort((one, two) => one.cost - two.cost)
    .slice(0, splitsFittedExactly)
    .map(({ split }) => split);
}

/**
 * The puddles of one wash of one passage, at most `puddles` of them: which families share, which paints
 * and parts, and every family's own load. Families share a puddle where that costs least. With `estimate` the
 * costs of all splits are estimated; with `exact` the splits of least estimated cost are fitted exactly.
 */
export function sharePuddles(
  families: readonly ActiveFamily[],
  fitter: PuddleFitter,
  wash: number,
  puddles: number,
  precision: Precision,
): SharedWash {
  const costs = families.map((family) => optionCosts(fitter.estimateCosts(family, wash)));
  const once = fittingOnce(fitter);
  const known = new Map<number, Puddle>();
  const solve = (bits: number): Puddle => {
    const before = known.get(bits);
    if (before) return before;
    const members = itemsOf(bits);
    const solved = puddleFor(
      members.map((i) => families[i]),
      members.map((i) => costs[i]),
      once,
      wash,
      precision,
    );
    known.set(bits, solved);
    return solved;
  };
  const groups = Math.min(families.length, puddles);
  const splits = partitions(families.length, groups).filter((split) => split.length === groups);
  let best: { cost: number; split: readonly number[] } = {
    cost: Number.POSITIVE_INFINITY,
    split: [],
  };
  for (const split of precision === 'exact' ? likelySplits(splits, costs) : splits) {
    const cost = split.reduce((sum, bits) => sum + solve(bits).cost, 0);
    if (cost < best.cost) best = { cost, split };
  }
  const familyWashes = new Array<FamilyWash | null>(families.length).fill(null);
  for (const bits of best.split) {
    const solved = solve(bits);
    for (const [k, i] of itemsOf(bits).entries()) familyWashes[i] = solved.familyWashes[k] ?? null;
  }
  return { cost: best.cost, familyWashes };
}
