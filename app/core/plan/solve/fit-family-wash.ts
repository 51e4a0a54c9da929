import { spectrumSize, surfaceFloor, writeLab } from '../../colour/spectrum.ts';
import { costOfAnotherPaint, strongestLoad } from '../../limits.ts';
import { type DriedSheet, writeWash } from './dried-sheet.ts';
import { leastLoad, type MixEstimate, MixEstimator, slotCost } from './estimate-mix-cost.ts';
import type { FamilyWork, Goal } from './family-work.ts';
import type { PuddleOption } from './puddle-options.ts';

/** No wash may raise lightness; this much is rounding, L*. */
const lightenSlack = 1e-6;

/** Three significant digits: finer than anyone mixes, coarse enough to print. */
const roundedLoad = (load: number): number => Number(load.toPrecision(3));

const golden = (Math.sqrt(5) - 1) / 2;

/**
 * Stiff paint makes no wash: a surcharge from thick cream upwards, nearly one point where butter begins (a load of 16),
 * nearly three at 32 (own). Butter is for accents and dry brush (common practice, no source).
 */
const stiffness = (load: number): number => Math.max(0, Math.log2(load / 12)) * 2;

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

/** Every paint of the palette, as bits. */
const anyPaint = -1;

/** Fits the options of one palette to the washes of families: one for each passage that is solved. */
export class WashFitter {
  readonly options: readonly PuddleOption[];
  readonly #estimator = new MixEstimator();
  /** Work space of the exact cost. */
  readonly #sheet = new Float64Array(spectrumSize);
  readonly #lab = new Float64Array(3);
  /** Estimated costs by ground: they go with it. */
  readonly #costs = new WeakMap<DriedSheet, Map<string, Float64Array>>();
  readonly #workNumbers = new Map<FamilyWork, number>();

  constructor(options: readonly PuddleOption[]) {
    this.options = options;
  }

  /**
   * An option's best loads for a family's wash; null where the family has nothing to paint. `closely`
   * finds the loads exactly, else they are read off between two tabulated loads.
   */
  fit(
    option: PuddleOption,
    { work, ground }: ActiveFamily,
    wash: number,
    closely: boolean,
  ): JudgedFamilyWash | null {
    const goal = work.washes[wash];
    if (!goal) return null;
    const loadFor = (wanted: Goal): MixEstimate => {
      const guess = this.#estimator.estimate(option, wanted, ground);
      return closely ? this.#bestLoad(option, guess.load, wanted, ground) : guess;
    };
    const full = loadFor(goal.full);
    const weak = goal.weak ? loadFor(goal.weak) : null;
    const targets = [...goal.full.targets, ...(goal.weak?.targets ?? [])];
    const area = targets.reduce((all, { weight }) => all + weight, 0);
    const plainness = costOfAnotherPaint * (option.members.length - 1) + stiffness(full.load);
    return {
      cost: full.cost + (weak?.cost ?? 0) + plainness * area,
      stroke: { option, load: full.load, weakLoad: weak?.load ?? null },
    };
  }

  /**
   * Rough cost of every option for one family's wash, Infinity where its paints rule it out. Kept with the ground:
   * while paints are being chosen most families stand where they stood, and all stand on white paper at first.
   */
  estimateCosts({ work, mask, ground }: ActiveFamily, wash: number): Float64Array {
    const number = this.#workNumbers.get(work) ?? this.#workNumbers.size;
    this.#workNumbers.set(work, number);
    const rows = this.#costs.get(ground) ?? new Map<string, Float64Array>();
    this.#costs.set(ground, rows);
    const key = `${number} ${mask} ${wash}`;
    const before = rows.get(key);
    if (before) return before;
    // On white paper every set of paints will be asked for: all at once is less than each by itself.
    const whole =
      wash === 0 && mask !== anyPaint
        ? this.estimateCosts({ work, mask: anyPaint, ground }, wash)
        : undefined;
    const { options } = this;
    const row = new Float64Array(options.length).fill(Number.POSITIVE_INFINITY);
    for (let n = 0; n < options.length; n++) {
      const option = options[n];
      if ((option.mask & ~mask) !== 0) continue;
      row[n] = whole ? whole[n] : this.#washCost(option, work, wash, ground);
    }
    rows.set(key, row);
    return row;
  }

  /** Area-weighted cost of one option for one family's wash: both strengths. */
  #washCost(option: PuddleOption, work: FamilyWork, wash: number, ground: DriedSheet): number {
    const goal = work.washes[wash];
    if (!goal) return 0;
    let cost = 0;
    let area = 0;
    if (goal.weak) {
      cost += this.#estimator.estimate(option, goal.weak, ground).cost;
      for (const { weight } of goal.weak.targets) area += weight;
    }
    const full = this.#estimator.estimate(option, goal.full, ground);
    cost += full.cost;
    for (const { weight } of goal.full.targets) area += weight;
    return cost + (costOfAnotherPaint * (option.members.length - 1) + stiffness(full.load)) * area;
  }

  /**
   * The load of least cost near a first guess (within a factor of 2), found by golden section on its
   * logarithm, rounded, and judged again after rounding. Load 0 and the bare ground's cost are not tried
   * here.
   */
  #bestLoad(option: PuddleOption, guess: number, goal: Goal, ground: DriedSheet): MixEstimate {
    let low = Math.log(Math.max(leastLoad, guess / 2));
    let high = Math.log(Math.min(strongestLoad, Math.max(guess * 2, leastLoad * 2)));
    const costAtLog = (x: number): number => this.#costAt(option, Math.exp(x), goal, ground);
    let one = high - golden * (high - low);
    let two = low + golden * (high - low);
    let costOne = costAtLog(one);
    let costTwo = costAtLog(two);
    for (let i = 0; i < 18; i++) {
      if (costOne <= costTwo) {
        high = two;
        two = one;
        costTwo = costOne;
        one = high - golden * (high - low);
        costOne = costAtLog(one);
      } else {
        low = one;
        one = two;
        costOne = costTwo;
        two = low + golden * (high - low);
        costTwo = costAtLog(two);
      }
    }
    const load = Math.min(
      strongestLoad,
      Math.max(leastLoad, roundedLoad(Math.exp((low + high) / 2))),
    );
    return { load, cost: this.#costAt(option, load, goal, ground) };
  }

  /** Exact cost of a goal at one load; Infinity where the wash would lighten the ground. */
  #costAt(option: PuddleOption, load: number, goal: Goal, ground: DriedSheet): number {
    const lab = this.#lab;
    writeWash(option, load, ground.reflectance, this.#sheet);
    writeLab(this.#sheet, surfaceFloor.dry, lab);
    const lightness = lab[0];
    if (lightness > ground.lab[0] + lightenSlack) return Number.POSITIVE_INFINITY;
    let cost = 0;
    for (const { lab: target, weight } of goal.targets) {
      cost += weight * slotCost(target, lightness, lab[1], lab[2]);
    }
    return cost;
  }
}
