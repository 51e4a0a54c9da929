import { mixSizes } from '../../limits.ts';
import { combinations } from '../../numeric/combinations.ts';
import { wholeParts } from '../../paint/mix.ts';
import { PairJudge, type PairOption, type PairPoint } from './pair-judge.ts';

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
const mixedAlready = 0.07;

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
