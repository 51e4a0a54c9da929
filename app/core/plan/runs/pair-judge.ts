import { missedBy } from './wanted-paint.ts';

/** A mix by its parts of every paint of a palette, which sum to 1, and as it is mixed. */
export interface PairOption {
  readonly members: readonly number[];
  readonly parts: readonly number[];
  readonly unit: Float64Array;
}

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

/** The pair's share of one family: what it misses by, weighted, and how much of each is laid on the whole. */
interface Judged {
  readonly cost: number;
  readonly first: number;
  readonly second: number;
}

/** Rounds the corner of a miss by nothing. */
const seenLeast = 0.25;

/** Judges options and pairs of them by what every point misses, each once. */
export class PairJudge {
  readonly #points: readonly Int32Array[];
  readonly #areas: readonly number[];
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
      Int32Array.from([...points.keys()].filter((i) => points[i].family === f)),
    );
    this.#areas = this.#points.map((there) => there.reduce((sum, i) => sum + this.#weights[i], 0));
    this.#squares = new Float64Array(count);
    this.#does = new Float32Array(options.length * count * missedBy);
    this.#own = new Float64Array(options.length * count);
    this.#meets = new Float64Array(options.length * count);
    for (let i = 0; i < count; i++) {
      this.#squares[i] = points[i].wanted.reduce((sum, each) => sum + each * each, 0);
    }
    for (let n = 0; n < options.length; n++) this.#write(n, options[n], points);
  }

  /** What an option does at every point. */
  #write(n: number, { members, unit }: PairOption, points: readonly PairPoint[]): void {
    const does = this.#does;
    for (let i = 0, place = n * this.#count; i < points.length; i++, place++) {
      const { wanted, slopes } = points[i];
      const start = place * missedBy;
      for (let m = 0; m < members.length; m++) {
        const p = members[m];
        const part = unit[p];
        for (let r = 0; r < missedBy; r++) {
          does[start + r] = does[start + r] + part * slopes[p * missedBy + r];
        }
      }
      let square = 1e-6;
      let product = 0;
      for (let r = 0; r < missedBy; r++) {
        const one = does[start + r];
        square += one * one;
        product += wanted[r] * one;
      }
      this.#own[place] = square;
      this.#meets[place] = product;
    }
  }

  areaOf(family: number): number {
    return this.#areas[family];
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
    const judged = this.#judge(one, two, this.#points[family]);
    this.#known.set(key, judged);
    return judged;
  }

  // Numbers in lists would each be made on the heap: a hundred MB of them a plan.
  #judge(one: number, two: number, points: Int32Array): Judged {
    const does = this.#does;
    const squares = this.#squares;
    const own = this.#own;
    const meets = this.#meets;
    let cost = 0;
    let first = 0;
    let second = 0;
    for (let n = 0; n < points.length; n++) {
      const i = points[n];
      const a = one * this.#count + i;
      const b = two * this.#count + i;
      const ta = meets[a];
      const tb = meets[b];
      const aa = own[a];
      const bb = own[b];
      let ab = 0;
      for (let r = 0; r < missedBy; r++) ab += does[a * missedBy + r] * does[b * missedBy + r];
      let x = Math.max(0, ta / aa);
      let y = 0;
      if (one !== two) {
        const divisor = aa * bb - ab * ab;
        const both = divisor > 1e-9 * aa * bb;
        const u = both ? (ta * bb - tb * ab) / divisor : 0;
        const v = both ? (tb * aa - ta * ab) / divisor : 0;
        const alone = Math.max(0, tb / bb);
        if (u > 0 && v > 0) {
          x = u;
          y = v;
        } else if (alone * tb > x * ta) {
          x = 0;
          y = alone;
        }
      }
      const most = this.#most[i];
      if (x + y > most) {
        // As much as may lie there: how much of it is the second.
        const apart = aa - 2 * ab + bb;
        const beside = apart > 0 ? (tb - ta - most * (ab - aa)) / apart : 0;
        y = one === two ? 0 : Math.min(most, Math.max(0, beside));
        x = most - y;
      }
      const left = squares[i] - 2 * (x * ta + y * tb) + x * x * aa + 2 * x * y * ab + y * y * bb;
      const weight = this.#weights[i];
      cost += weight * Math.sqrt(Math.max(0, left) + seenLeast);
      first += weight * x;
      second += weight * y;
    }
    return { cost, first, second };
  }
}
