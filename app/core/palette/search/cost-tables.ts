import { DifferenceBound, differenceOf, widestLightnessGap } from '../../colour/ciede2000.ts';
import { costOfAnotherPaint, costOfUnsteadiness, mixSizes, searchShares } from '../../limits.ts';
import { defaultPaperLab } from '../../paint/colour-of-washes.ts';
import { wholeParts } from '../../paint/mix.ts';
import type { Checkpoint } from '../checkpoint.ts';
import { GroupMixer, labSteps, type MixGroup } from '../library/group-mixer.ts';
import type { KnownCosts, MixLibrary } from '../library/mix-library.ts';
import { type CostRows, costsOf, farCosts, lowerRow } from './cost-rows.ts';
import type { PaletteTarget } from './palette-targets.ts';

/** A colour to reach, with what makes the search for it quick. */
interface SoughtColour {
  readonly target: PaletteTarget;
  readonly near: DifferenceBound;
}

const soughtColour = (target: PaletteTarget): SoughtColour => ({
  target,
  near: new DifferenceBound(target.lab),
});

// Imported bindings, copied once for the loop.
const perUnit = 1 / labSteps;
/** ln of the ratio of two neighbouring shares. */
const betweenShares = Math.log(searchShares[1] / searchShares[0]);
const shares = searchShares.length;
const difference = differenceOf;
const paper = defaultPaperLab;

/** Place among a mix's shares, from `first` on, from which it is as dark as `wanted` (as kept); -1 where it never is. */
function placeAsDark(lightness: Int16Array, first: number, wanted: number): number {
  let [low, high] = [-1, shares - 1];
  if (lightness[first + high] > wanted) return -1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (lightness[first + middle] > wanted) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * Writes L*, a*, b* of every mix of the group with as much water as gives it that lightness, interpolated between the
 * shares kept of it and the paper, or as a full coat where that is not dark enough; by how much L* falls there from
 * one share to the next; and its chroma.
 */
function writeMixesAt(l: number, { lightness, chroma }: MixGroup, out: Float64Array): void {
  const [paperL, paperA, paperB] = paper;
  const wanted = l * labSteps;
  for (let first = 0, to = 0; first < lightness.length; first += shares, to += mixFigures) {
    const place = placeAsDark(lightness, first, wanted);
    const n = place < 0 ? first + shares - 1 : first + place;
    out[to] = lightness[n] * perUnit;
    out[to + 1] = chroma[2 * n] * perUnit;
    out[to + 2] = chroma[2 * n + 1] * perUnit;
    const lower = Math.max(n, first + 1);
    out[to + 3] = Math.max(0, lightness[lower - 1] - lightness[lower]) * perUnit;
    if (place >= 0) {
      const lighter = place === 0 ? paperL : lightness[n - 1] * perUnit;
      const a = place === 0 ? paperA : chroma[2 * n - 2] * perUnit;
      const b = place === 0 ? paperB : chroma[2 * n - 1] * perUnit;
      const part = lighter > out[to] ? Math.min(1, (lighter - l) / (lighter - out[to])) : 1;
      out[to] = lighter + part * (out[to] - lighter);
      out[to + 1] = a + part * (out[to + 1] - a);
      out[to + 2] = b + part * (out[to + 2] - b);
    }
    out[to + 4] = Math.sqrt(out[to + 1] * out[to + 1] + out[to + 2] * out[to + 2]);
  }
}

/** L* of the darkest full coat. */
function leastLightness({ lightness }: MixGroup): number {
  let least = 100 * labSteps;
  for (let n = shares - 1; n < lightness.length; n += shares) least = Math.min(least, lightness[n]);
  return least * perUnit;
}

/** Figures written of every mix. */
const mixFigures = 5;

const mostWays = Math.max(...mixSizes.map((size) => wholeParts(size).length));

/** For the mixes of one group. */
interface WorkSpace {
  readonly mixes: Float64Array;
  readonly bounds: Float64Array;
}

/**
 * Least CIEDE2000 of this group's mixes, each thinned to the lightness wanted, to each colour, plus what it costs that
 * the mix is unsteady and `costOfAnotherPaint` for each paint beyond the first, where that is less than `limits`:
 * written to out[offset ..]. A mix is passed over only where a lower bound of the
 * difference rules it out: the quick one first, which most do not pass.
 */
function writeGroupCosts(
  group: MixGroup,
  sought: readonly SoughtColour[],
  limits: Float32Array,
  mixer: GroupMixer,
  { mixes, bounds }: WorkSpace,
  out: Float32Array,
  offset: number,
): void {
  const extra = costOfAnotherPaint * (group.members.length - 1);
  const ways = group.sensitivity.length;
  const fullest = leastLightness(group);
  let mixedAt = Number.NaN;
  for (let t = 0; t < sought.length; t++) {
    const { target, near } = sought[t];
    const [l, a, b] = target.lab;
    const limit = limits[t] - extra;
    let best = Math.max(0, limit);
    if (fullest - l > widestLightnessGap(l, best)) continue;
    if (l !== mixedAt) writeMixesAt(l, group, mixes);
    mixedAt = l;
    let nearest = 0;
    for (let n = 0, i = 0; n < ways; n++, i += mixFigures) {
      bounds[n] = near.leastSquared(mixes[i], mixes[i + 1], mixes[i + 2], mixes[i + 4]);
      if (bounds[n] < bounds[nearest]) nearest = n;
    }
    // The likeliest first: it rules out most of the others.
    for (let turn = -1; turn < ways; turn++) {
      const n = turn < 0 ? nearest : turn;
      const squared = best * best;
      if (bounds[n] > squared || turn === nearest) continue;
      const i = n * mixFigures;
      const own = mixes[i];
      const u = mixes[i + 1];
      const v = mixes[i + 2];
      // How unsteady a mix is takes far longer to work out than whether it may matter.
      if (Number.isNaN(group.sensitivity[n]) && !near.isWithin(squared, own, u, v)) continue;
      const sensitivity = mixer.sensitivityOf(group, n);
      const unsteady = (costOfUnsteadiness * sensitivity * mixes[i + 3]) / betweenShares;
      const left = best - unsteady;
      if (left <= 0 || !near.isWithin(left * left, own, u, v)) continue;
      const found = difference(l, a, b, own, u, v) + unsteady;
      if (found < best) best = found;
    }
    if (best < limit) out[offset + t] = best + extra;
  }
}

/** Three in every order. */
const ordersOf = (one: number, two: number, three: number) =>
  [
    [one, two, three],
    [one, three, two],
    [two, one, three],
    [two, three, one],
    [three, one, two],
    [three, two, one],
  ] as const;

/** Groups between two checkpoints: some milliseconds of work. */
const stretch = 200;

/**
 * Least cost of every target with every group of one to three paints. Dominated groups, those a subset of which does
 * as well, get Infinity: every set that contains the group also contains the subset.
 */
export class CostTables {
  readonly targetCount: number;
  readonly paintCount: number;
  /** Groups x targets. */
  readonly costs: Float32Array;
  /** The same, as rows to be compared. */
  readonly rows: CostRows;
  /** L* of each group's darkest mix. */
  readonly darkest: Float32Array;
  /** Indices of the paints of every group, rising. */
  readonly groups: readonly (readonly number[])[];
  /** What each paint adds to the cost of a set. */
  readonly prices: Float64Array;
  readonly #groups: Int32Array;
  readonly #mixer = new GroupMixer([]);
  readonly #space: WorkSpace = {
    mixes: new Float64Array(mixFigures * mostWays),
    bounds: new Float64Array(mostWays),
  };

  private constructor(library: MixLibrary, targetCount: number, prices: readonly number[]) {
    const { paints, groups } = library;
    this.paintCount = paints.length;
    this.prices = Float64Array.from(prices);
    this.targetCount = targetCount;
    this.rows = farCosts(groups.length * targetCount);
    this.costs = costsOf(this.rows);
    this.darkest = Float32Array.from(groups, (group) => group.darkest);
    this.groups = groups.map(({ members }) => members);
    const base = paints.length + 1;
    this.#groups = new Int32Array(base ** 3).fill(-1);
    for (const [n, { members }] of groups.entries()) {
      const [one, two = -1, three = -1] = members;
      for (const [x, y, z] of ordersOf(one, two, three)) {
        this.#groups[((x + 1) * base + y + 1) * base + z + 1] = n;
      }
    }
  }

  static async of(
    library: MixLibrary,
    targets: readonly PaletteTarget[],
    prices: readonly number[],
    checkpoint: Checkpoint,
    known?: KnownCosts,
  ): Promise<CostTables> {
    const tables = new CostTables(library, targets.length, prices);
    const { groups } = library;
    const sought = targets.map(soughtColour);
    for (const [n, group] of groups.entries()) {
      if (n % stretch === 0) await checkpoint(n / groups.length);
      tables.#fill(n, group, sought, known);
    }
    return tables;
  }

  #fill(n: number, group: MixGroup, sought: readonly SoughtColour[], known?: KnownCosts): void {
    const count = this.targetCount;
    const before = known?.get(group.lightness);
    if (before) {
      this.costs.set(before, n * count);
      return;
    }
    this.#search(n, group, sought);
    known?.set(group.lightness, this.costs.subarray(n * count, (n + 1) * count));
  }

  #search(n: number, group: MixGroup, sought: readonly SoughtColour[]): void {
    const limits = this.#limits(group.members);
    writeGroupCosts(
      group,
      sought,
      limits,
      this.#mixer,
      this.#space,
      this.costs,
      n * this.targetCount,
    );
  }

  /** Cost of each target with fewer of these paints. */
  #limits(members: readonly number[]): Float32Array {
    const limits = farCosts(this.targetCount);
    if (members.length > 1)
      for (const member of members) this.lower(limits, this.indexOf([member]));
    if (members.length > 2) {
      for (const out of members) {
        this.lower(limits, this.indexOf(members.filter((member) => member !== out)));
      }
    }
    return costsOf(limits);
  }

  /** Lowers a row of costs to those of a group where they are less. */
  lower(row: CostRows, group: number): void {
    lowerRow(row, 0, this.rows, group, this.targetCount);
  }

  /** Of one to three paints, in any order; -1 for three where the library holds none of them. */
  indexOf(members: readonly number[]): number {
    const [one, two = -1, three = -1] = members;
    return this.groupOf(one, two, three);
  }

  /** As `indexOf`, of three paints in any order; -1 where there are fewer. */
  groupOf(one: number, two: number, three: number): number {
    const base = this.paintCount + 1;
    return this.#groups[((one + 1) * base + two + 1) * base + three + 1];
  }
}
