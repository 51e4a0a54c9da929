import { spectrumSize } from '../../colour/spectrum.ts';
import { costOfAnotherPaint } from '../../limits.ts';
import { writeSeenLayer } from '../../paint/seen-layer.ts';
import type { DriedSheet } from './dried-sheet.ts';
import { leastLoad, type MixEstimate, MixEstimator, slotCost } from './estimate-mix-cost.ts';
import type { FamilyWork, Goal } from './family-work.ts';
import type { PuddleOption } from './puddle-options.ts';

/** No wash may raise lightness; this much is rounding, L*. */
const lightenSlack = 1e-6;

/** Three significant digits: finer than anyone mixes, coarse enough to print. */
const roundedLoad = (load: number): number => Number(load.toPrecision(3));

const golden = (Math.sqrt(5) - 1) / 2;

/**
 * Stiff paint makes no wash: a surcharge from thick cream upwards, nearly one point where butter begins,
 * nearly two in a full coat (own), below the limit each wash has.
 */
const stiffness = (load: number): number => Math.max(0, Math.log2(load / 11)) * 2;

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
  /** Bit i is set where the family may use paint i of the palette. */
  readonly paintBits: number;
  readonly dried: DriedSheet;
}

interface JudgedFamilyWash {
  /** Area-weighted; Infinity where it would lighten the dried sheet. */
  readonly cost: number;
  readonly familyWash: FamilyWash;
}

/** `exact` searches for the load of least cost; `estimate` interpolates it between two tabulated loads. */
export type Precision = 'estimate' | 'exact';

/** Fits the options of one palette to the washes of families: one for each passage that is solved. */
export class WashFitter {
  readonly options: readonly PuddleOption[];
  readonly #estimator = new MixEstimator();
  /** Work space of the exact cost. */
  readonly #kx = new Float64Array(spectrumSize);
  readonly #sx = new Float64Array(spectrumSize);
  readonly #lab = new Float64Array(3);
  /** Estimated costs by dried sheet, released together with it. */
  readonly #costs = new WeakMap<DriedSheet, Map<string, Float64Array>>();
  readonly #workNumbers = new Map<FamilyWork, number>();

  constructor(options: readonly PuddleOption[]) {
    this.options = options;
  }

  /**
   * An option's best loads for a family's wash; null where the family has nothing to paint.
   */
  fit(
    option: PuddleOption,
    { work, dried }: ActiveFamily,
    wash: number,
    precision: Precision,
  ): JudgedFamilyWash | null {
    const goal = work.washes[wash];
    if (!goal) return null;
    const loadFor = (wanted: Goal): MixEstimate => {
      const guess = this.#estimator.estimate(option, wanted, dried, goal.mostLoad);
      const most = Math.min(option.coat, goal.mostLoad);
      return precision === 'exact' ? this.#bestLoad(option, guess, most, wanted, dried) : guess;
    };
    const full = loadFor(goal.full);
    const weak = goal.weak ? loadFor(goal.weak) : null;
    const targets = [...goal.full.targets, ...(goal.weak?.targets ?? [])];
    const area = targets.reduce((all, { weight }) => all + weight, 0);
    const plainness = costOfAnotherPaint * (option.members.length - 1) + stiffness(full.load);
    return {
      cost: full.cost + (weak?.cost ?? 0) + plainness * area,
      familyWash: { option, load: full.load, weakLoad: weak?.load ?? null },
    };
  }

  /**
   * Estimated cost of every option for one family's wash, Infinity where the family's paints rule the option out.
   * Costs are kept by dried sheet: while paints are being chosen most families lie on the same sheet as before, all
   * begin on white paper, and most sets of paints have mixes in common.
   */
  estimateCosts({ work, paintBits, dried }: ActiveFamily, wash: number): Float64Array {
    const { options } = this;
    const number = this.#workNumbers.get(work) ?? this.#workNumbers.size;
    this.#workNumbers.set(work, number);
    const rows = this.#costs.get(dried) ?? new Map<string, Float64Array>();
    this.#costs.set(dried, rows);
    const rowOf = (key: string, unknown: number): Float64Array => {
      const row = rows.get(key) ?? new Float64Array(options.length).fill(unknown);
      rows.set(key, row);
      return row;
    };
    const key = `${number} ${paintBits} ${wash}`;
    const before = rows.get(key);
    if (before) return before;
    const known = rowOf(`${number} ${wash}`, Number.NaN);
    const row = rowOf(key, Number.POSITIVE_INFINITY);
    for (let n = 0; n < options.length; n++) {
      const option = options[n];
      if ((option.paintBits & ~paintBits) !== 0) continue;
      if (Number.isNaN(known[n])) known[n] = this.#washCost(option, work, wash, dried);
      row[n] = known[n];
    }
    return row;
  }

  /** Area-weighted cost of one option for one family's wash: both strengths. */
  #washCost(option: PuddleOption, work: FamilyWork, wash: number, dried: DriedSheet): number {
    const goal = work.washes[wash];
    if (!goal) return 0;
    let cost = 0;
    let area = 0;
    if (goal.weak) {
      cost += this.#estimator.estimate(option, goal.weak, dried, goal.mostLoad).cost;
      for (const { weight } of goal.weak.targets) area += weight;
    }
    const full = this.#estimator.estimate(option, goal.full, dried, goal.mostLoad);
    cost += full.cost;
    for (const { weight } of goal.full.targets) area += weight;
    return cost + (costOfAnotherPaint * (option.members.length - 1) + stiffness(full.load)) * area;
  }

  /**
   * The load of least cost near a first guess (within a factor of 2, `most` at most), found by golden section on its
   * logarithm, rounded, and judged again after rounding, as unsteady as at first. Load 0, which leaves the sheet bare,
   * is not tried.
   */
  #bestLoad(
    option: PuddleOption,
    { load: guess, unsteady }: MixEstimate,
    most: number,
    goal: Goal,
    dried: DriedSheet,
  ): MixEstimate {
    let low = Math.log(Math.max(leastLoad, guess / 2));
    let high = Math.log(Math.min(most, Math.max(guess * 2, leastLoad * 2)));
    const costAtLog = (x: number): number => this.#costAt(option, Math.exp(x), goal, dried);
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
    const load = Math.min(most, Math.max(leastLoad, roundedLoad(Math.exp((low + high) / 2))));
    const area = goal.targets.reduce((all, { weight }) => all + weight, 0);
    return { load, cost: this.#costAt(option, load, goal, dried) + unsteady * area, unsteady };
  }

  /** Exact cost of a goal at one load; Infinity where the wash would lighten the dried sheet. */
  #costAt(option: PuddleOption, load: number, goal: Goal, dried: DriedSheet): number {
    const lab = this.#lab;
    const kx = this.#kx;
    const sx = this.#sx;
    const { K, S } = option;
    for (let i = 0; i < spectrumSize; i++) {
      kx[i] = K[i] * load;
      sx[i] = S[i] * load;
    }
    writeSeenLayer(kx, sx, dried.reflectance, lab);
    const lightness = lab[0];
    if (lightness > dried.lab[0] + lightenSlack) return Number.POSITIVE_INFINITY;
    let cost = 0;
    for (const { lab: target, weight } of goal.targets) {
      cost += weight * slotCost(target, lightness, lab[1], lab[2]);
    }
    return cost;
  }
}
