import { mixSizes } from '../../limits.ts';
import { combinations } from '../../numeric/combinations.ts';
import { wholeParts } from '../../paint/mix.ts';
import { missedBy } from './wanted-paint.ts';

/** A mix by its parts of every paint of a palette, which sum to 1, and as it is mixed. */
export interface PairOption {
  readonly members: readonly number[];
  readonly parts: readonly number[];
  readonly unit: Float64Array;
}

/** Every mix of at most three of `count` paints. */
export const pairOptions = (count: number): PairOption[] =>
  mixSizes.flatMap((size) =>
    combinations(count, size).flatMap((members) =>
      wholeParts(size).map((parts): PairOption => {
        const unit = new Float64Array(count);
        const sum = parts.reduce((all, each) => all + each, 0);
        for (const [n, member] of members.entries()) unit[member] = parts[n] / sum;
        return { members, parts, unit };
      }),
    ),
  );

/** What one place of a family wants: paint freely mingled, and how the colour moves with each paint. */
export interface PairPoint {
  /** Number of the family, 0, 1, ... */
  readonly family: number;
  /** What all paint there should do, in 4 figures. */
  readonly wanted: Float64Array;
  /** What one ml/m2 of every paint does to them: paints x 4. */
  readonly slopes: Float64Array;
  /** ml/m2 that may lie there, at most. */
  readonly most: number;
  readonly weight: number;
}

/** Puddles of one wash, and of every family the one it is painted with and the one that meets it. */
export interface SharedPairs {
  readonly puddles: readonly number[];
  readonly own: readonly number[];
  readonly meets: readonly (number | null)[];
}

/** Options tried for each family, the nearest by themselves. */
const likelyOptions = 70;
/** A second puddle must bring a family this much nearer, in visible difference (own). */
const worthMeeting = 0.1;
/** A puddle more must bring the wash this much nearer (own). */
const worthPuddle = 0.05;
/** Every paint more in a puddle, once for the wash (own): a mix of few is mixed alike again. */
const paintMore = 0.02;
/** A puddle that another wash has already is one well less (own). */
const mixedAlready = 0.04;
/** Rounds the corner of a miss by nothing. */
const seenLeast = 0.25;

/** The pair's share of one family: what it misses by, weighted, and how much of each is laid on the whole. */
interface Judged {
  readonly cost: number;
  readonly first: number;
  readonly second: number;
}

/**
 * Chooses up to `most` puddles of a wash so that every family comes nearest to what its places want with one of them,
 * or two that meet: forward one by one, then each changed once for any other. What only meets others and is no paint
 * by itself would be a puddle nobody asks for: it becomes the own puddle of the family that takes most of it, or gives
 * way to a paint. `before` are options mixed for earlier washes.
 */
export function sharePairs(
  points: readonly PairPoint[],
  options: readonly PairOption[],
  families: number,
  most: number,
  before: ReadonlySet<number>,
): SharedPairs {
  const judge = new PairJudge(points, options, families);
  const whole = points.reduce((sum, { weight }) => sum + weight, 0);
  const isPaint = (n: number): boolean => options[n].members.length === 1;
  const best = (set: readonly number[], family: number) => {
    let found = { cost: Number.POSITIVE_INFINITY, own: set[0], meets: null as number | null };
    const area = judge.areaOf(family);
    for (const [n, one] of set.entries()) {
      const alone = judge.pair(one, one, family);
      if (alone.cost < found.cost) found = { cost: alone.cost, own: one, meets: null };
      for (const two of set.slice(0, n)) {
        // With one family the second puddle is nobody's own: only a paint by itself can be.
        if (families === 1 && !isPaint(one) && !isPaint(two)) continue;
        const { cost, first, second } = judge.pair(one, two, family);
        const dear = cost + worthMeeting * area;
        if (dear >= found.cost) continue;
        found =
          first >= second
            ? { cost: dear, own: one, meets: two }
            : { cost: dear, own: two, meets: one };
      }
    }
    return found;
  };
  const priceOf = (n: number): number =>
    paintMore * (options[n].members.length - 1) - (before.has(n) ? mixedAlready : 0);
  /** Given up, with the cost so far, where that is `enough`. */
  const costOf = (set: readonly number[], enough = Number.POSITIVE_INFINITY): number => {
    let sum = whole * set.reduce((all, n) => all + priceOf(n), 0);
    for (let f = 0; f < families && sum < enough; f++) sum += best(set, f).cost;
    return sum;
  };
  const singles = [...options.keys()].filter(isPaint);
  const tried = [...new Set([...judge.likely(likelyOptions), ...before, ...singles])];
  let set: number[] = [];
  let least = Number.POSITIVE_INFINITY;
  const add = (from: readonly number[]): boolean => {
    let next: number[] = [];
    let cost = set.length > 0 ? least - worthPuddle * whole : least;
    for (const n of from) {
      if (set.includes(n)) continue;
      const dear = costOf([...set, n], cost);
      if (dear >= cost) continue;
      cost = dear;
      next = [...set, n];
    }
    if (next.length === 0) return false;
    [set, least] = [next, cost];
    return true;
  };
  while (set.length < most && add(tried));
  for (let place = 0; place < set.length; place++) {
    for (const n of tried) {
      if (set.includes(n)) continue;
      const cost = costOf(set.with(place, n), least - 1e-9);
      if (cost < least - 1e-9) [set, least] = [set.with(place, n), cost];
    }
  }
  const orphanOf = (pairs: readonly OwnAndMeets[]): number | undefined =>
    set.find(
      (n) => !isPaint(n) && pairs.some((it) => it.meets === n) && pairs.every((it) => it.own !== n),
    );
  // Ends: a mix goes every time, and what comes is a paint.
  for (;;) {
    let pairs: OwnAndMeets[] | null = Array.from({ length: families }, (_, f) => best(set, f));
    let orphan = orphanOf(pairs);
    while (pairs && orphan !== undefined) {
      pairs = turnedRound(pairs, orphan, options, judge);
      orphan = pairs ? orphanOf(pairs) : orphan;
    }
    if (pairs) {
      return {
        puddles: set,
        own: pairs.map(({ own }) => own),
        meets: pairs.map(({ meets }) => meets),
      };
    }
    set = set.filter((n) => n !== orphan);
    least = costOf(set);
    add(singles);
  }
}

interface OwnAndMeets {
  readonly own: number;
  readonly meets: number | null;
}

/**
 * Of the families that may take an orphan for its own (what they had then is another's own, or a paint) the one whose
 * paint is most of it: of others it would be the name, and hardly there.
 */
function turnedRound(
  shared: readonly OwnAndMeets[],
  orphan: number,
  options: readonly PairOption[],
  judge: PairJudge,
): OwnAndMeets[] | null {
  const partIn = (f: number): number => {
    const { first, second } = judge.pair(shared[f].own, orphan, f);
    return second / (first + second || 1);
  };
  const [f] = [...shared.keys()]
    .filter(
      (f) =>
        shared[f].meets === orphan &&
        (options[shared[f].own].members.length === 1 ||
          shared.some(({ own }, n) => n !== f && own === shared[f].own)),
    )
    .sort((one, two) => partIn(two) - partIn(one));
  return f === undefined ? null : [...shared].with(f, { own: orphan, meets: shared[f].own });
}

/** Judges options and pairs of them by what every point misses, each once. */
class PairJudge {
  readonly #points: readonly (readonly number[])[];
  readonly #weights: Float64Array;
  readonly #most: Float64Array;
  /** What every point wants, squared. */
  readonly #squares: Float64Array;
  /** What one ml/m2 of every option does there: options x points x 4. */
  readonly #does: Float32Array;
  /** That squared, and times what is wanted there: options x points. */
  readonly #own: Float64Array;
  readonly #meets: Float64Array;
  readonly #count: number;
  readonly #optionCount: number;
  readonly #known = new Map<number, Judged>();

  constructor(points: readonly PairPoint[], options: readonly PairOption[], families: number) {
    const count = points.length;
    this.#count = count;
    this.#optionCount = options.length;
    this.#weights = Float64Array.from(points, ({ weight }) => weight);
    this.#most = Float64Array.from(points, ({ most }) => most);
    this.#points = Array.from({ length: families }, (_, f) =>
      [...points.keys()].filter((i) => points[i].family === f),
    );
    this.#squares = new Float64Array(count);
    this.#does = new Float32Array(options.length * count * missedBy);
    this.#own = new Float64Array(options.length * count);
    this.#meets = new Float64Array(options.length * count);
    for (const [i, { wanted, slopes }] of points.entries()) {
      const write = (unit: Float64Array, out: Float32Array, at: number) => {
        for (let p = 0; p < unit.length; p++) {
          if (unit[p] === 0) continue;
          for (let r = 0; r < missedBy; r++) {
            out[at + r] = out[at + r] + unit[p] * slopes[p * missedBy + r];
          }
        }
      };
      this.#squares[i] = wanted.reduce((sum, each) => sum + each * each, 0);
      for (const [n, { unit }] of options.entries()) {
        const place = n * count + i;
        write(unit, this.#does, place * missedBy);
        let [square, product] = [1e-6, 0];
        for (let r = 0; r < missedBy; r++) {
          const does = this.#does[place * missedBy + r];
          square += does * does;
          product += wanted[r] * does;
        }
        this.#own[place] = square;
        this.#meets[place] = product;
      }
    }
  }

  areaOf(family: number): number {
    return this.#points[family].reduce((sum, i) => sum + this.#weights[i], 0);
  }

  /** The nearest options by themselves, for each family. */
  likely(about: number): number[] {
    const all = Array.from({ length: this.#optionCount }, (_, n) => n);
    return this.#points.flatMap((points, f) =>
      points.length === 0
        ? []
        : all
            .map((n) => ({ n, cost: this.pair(n, n, f).cost }))
            .sort((one, two) => one.cost - two.cost || one.n - two.n)
            .slice(0, about)
            .map(({ n }) => n),
    );
  }

  /** Two options, or one (twice), at their best amounts at every point of a family. */
  pair(one: number, two: number, family: number): Judged {
    const key = (one * this.#optionCount + two) * this.#points.length + family;
    const before = this.#known.get(key);
    if (before) return before;
    const does = this.#does;
    const [squares, own, meets] = [this.#squares, this.#own, this.#meets];
    let [cost, first, second] = [0, 0, 0];
    for (const i of this.#points[family]) {
      const [a, b] = [one * this.#count + i, two * this.#count + i];
      const [tt, ta, tb, aa, bb] = [squares[i], meets[a], meets[b], own[a], own[b]];
      let ab = 0;
      for (let r = 0; r < missedBy; r++) ab += does[a * missedBy + r] * does[b * missedBy + r];
      let x = Math.max(0, ta / aa);
      let y = 0;
      if (one !== two) {
        const divisor = aa * bb - ab * ab;
        const both = divisor > 1e-9 * aa * bb;
        const [u, v] = both
          ? [(ta * bb - tb * ab) / divisor, (tb * aa - ta * ab) / divisor]
          : [0, 0];
        const alone = Math.max(0, tb / bb);
        if (both && u > 0 && v > 0) [x, y] = [u, v];
        else if (alone * tb > x * ta) [x, y] = [0, alone];
      }
      const most = this.#most[i];
      if (x + y > most) {
        // As much as may lie there: how much of it is the second.
        const apart = aa - 2 * ab + bb;
        const second = apart > 0 ? (tb - ta - most * (ab - aa)) / apart : 0;
        y = one === two ? 0 : Math.min(most, Math.max(0, second));
        x = most - y;
      }
      const left = tt - 2 * (x * ta + y * tb) + x * x * aa + 2 * x * y * ab + y * y * bb;
      const weight = this.#weights[i];
      cost += weight * Math.sqrt(Math.max(0, left) + seenLeast);
      first += weight * x;
      second += weight * y;
    }
    const judged = { cost, first, second };
    this.#known.set(key, judged);
    return judged;
  }
}
