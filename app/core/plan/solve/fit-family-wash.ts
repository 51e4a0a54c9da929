import { bandCount, surfaceFloor, writeLab } from '../../colour/spectrum.ts';
import { type DriedSheet, writeWash } from './dried-sheet.ts';
import { estimateMixCost, leastLoad, mixEstimate, slotCost } from './estimate-mix-cost.ts';
import type { FamilyWork, Goal } from './family-work.ts';
import type { PuddleOption } from './puddle-options.ts';

const mostLoad = 32;

/** No wash may raise lightness; this much is rounding, L*. */
const lightenSlack = 1e-6;

/** Three significant digits: finer than anyone mixes, coarse enough to print. */
const roundedLoad = (load: number): number => Number(load.toPrecision(3));

const sheet = new Float64Array(bandCount);
const lab = new Float64Array(3);

/** Exact cost of a goal at one load; Infinity where the wash would lighten the ground. */
function costAt(option: PuddleOption, load: number, goal: Goal, ground: DriedSheet): number {
  writeWash(option, load, ground.reflectance, sheet);
  writeLab(sheet, surfaceFloor.dry, lab);
  const lightness = lab[0];
  if (lightness > ground.lab[0] + lightenSlack) return Number.POSITIVE_INFINITY;
  let cost = 0;
  for (const { lab: target, weight } of goal.targets) {
    cost += weight * slotCost(target, lightness, lab[1], lab[2]);
  }
  return cost;
}

const golden = (Math.sqrt(5) - 1) / 2;

/**
 * The load of least cost near a first guess (within a factor of 2), found by golden section on its
 * logarithm, rounded, and judged again after rounding. Load 0 and the bare ground's cost are not tried
 * here.
 */
function bestLoad(
  option: PuddleOption,
  guess: number,
  goal: Goal,
  ground: DriedSheet,
): { load: number; cost: number } {
  let low = Math.log(Math.max(leastLoad, guess / 2));
  let high = Math.log(Math.min(mostLoad, Math.max(guess * 2, leastLoad * 2)));
  const at = (x: number): number => costAt(option, Math.exp(x), goal, ground);
  let one = high - golden * (high - low);
  let two = low + golden * (high - low);
  let costOne = at(one);
  let costTwo = at(two);
  for (let i = 0; i < 18; i++) {
    if (costOne <= costTwo) {
      high = two;
      two = one;
      costTwo = costOne;
      one = high - golden * (high - low);
      costOne = at(one);
    } else {
      low = one;
      one = two;
      costOne = costTwo;
      two = low + golden * (high - low);
      costTwo = at(two);
    }
  }
  const load = Math.min(mostLoad, Math.max(leastLoad, roundedLoad(Math.exp((low + high) / 2))));
  return { load, cost: costAt(option, load, goal, ground) };
}

/** Added per paint beyond the first, times area: two paints before three (design: the figure of the palette). */
const perMixedPaint = 0.4;

/**
 * Stiff paint makes no wash: a surcharge from thick cream upwards, nearly one point where butter begins (a load of 16),
 * nearly three at 32 (own figure). Butter is for accents and dry brush (common practice, no source).
 */
const stiffness = (load: number): number => Math.max(0, Math.log2(load / 12)) * 2;

/** Area-weighted cost of one option for one family's wash: both strengths. */
function washCost(
  option: PuddleOption,
  work: FamilyWork,
  wash: number,
  ground: DriedSheet,
): { cost: number; load: number } {
  const goal = work.washes[wash];
  if (!goal) return { cost: 0, load: 0 };
  let cost = 0;
  let area = 0;
  if (goal.weak) {
    estimateMixCost(option, goal.weak, ground);
    cost += mixEstimate.cost;
    for (const { weight } of goal.weak.targets) area += weight;
  }
  estimateMixCost(option, goal.full, ground);
  cost += mixEstimate.cost;
  for (const { weight } of goal.full.targets) area += weight;
  cost += (perMixedPaint * (option.members.length - 1) + stiffness(mixEstimate.load)) * area;
  return { cost, load: mixEstimate.load };
}

/** One family's share in one wash. */
export interface FamilyWash {
  readonly option: PuddleOption;
  readonly load: number;
  /** The thinner strength for lighter bands that share the wash. */
  readonly weakLoad: number | null;
}

/** One active family at one wash. */
export interface ActiveFamily {
  readonly work: FamilyWork;
  /** The paints it keeps to, as bits. */
  readonly mask: number;
  readonly ground: DriedSheet;
}

interface JudgedFamilyWash {
  /** Area-weighted; Infinity where it would lighten the ground. */
  readonly cost: number;
  readonly stroke: FamilyWash;
}

/**
 * An option's best loads for a family's wash; null where the family has nothing to paint. `closely`
 * finds the loads exactly, else they are read off between two look loads.
 */
export function fitFamilyWash(
  option: PuddleOption,
  { work, ground }: ActiveFamily,
  wash: number,
  closely: boolean,
): JudgedFamilyWash | null {
  const goal = work.washes[wash];
  if (!goal) return null;
  const loadFor = (wanted: typeof goal.full): { load: number; cost: number } => {
    estimateMixCost(option, wanted, ground);
    const { load, cost } = mixEstimate;
    return closely ? bestLoad(option, load, wanted, ground) : { load, cost };
  };
  const full = loadFor(goal.full);
  const weak = goal.weak ? loadFor(goal.weak) : null;
  const targets = [...goal.full.targets, ...(goal.weak?.targets ?? [])];
  const area = targets.reduce((all, { weight }) => all + weight, 0);
  const plainness = perMixedPaint * (option.members.length - 1) + stiffness(full.load);
  return {
    cost: full.cost + (weak?.cost ?? 0) + plainness * area,
    stroke: { option, load: full.load, weakLoad: weak?.load ?? null },
  };
}

/** Every paint of the palette, as bits. */
const anyPaint = -1;

const kept = new WeakMap<DriedSheet, Map<string, Float64Array>>();
const workIds = new WeakMap<FamilyWork, number>();
let nextWorkId = 0;

/**
 * Rough cost of every option for one family's wash, Infinity where its paints rule it out. Kept with the ground:
 * while paints are being chosen most families stand where they stood, and all stand on white paper at first.
 */
export function estimateOptionCosts(
  { work, mask, ground }: ActiveFamily,
  options: readonly PuddleOption[],
  wash: number,
): Float64Array {
  const id = workIds.get(work) ?? nextWorkId++;
  workIds.set(work, id);
  const rows = kept.get(ground) ?? new Map<string, Float64Array>();
  kept.set(ground, rows);
  const key = `${id} ${mask} ${wash}`;
  const before = rows.get(key);
  if (before) return before;
  // On white paper every set of paints will be asked for: all at once is less than each by itself.
  const whole =
    wash === 0 && mask !== anyPaint
      ? estimateOptionCosts({ work, mask: anyPaint, ground }, options, wash)
      : undefined;
  const row = new Float64Array(options.length).fill(Number.POSITIVE_INFINITY);
  for (let n = 0; n < options.length; n++) {
    const option = options[n];
    if ((option.mask & ~mask) !== 0) continue;
    row[n] = whole ? whole[n] : washCost(option, work, wash, ground).cost;
  }
  rows.set(key, row);
  return row;
}
