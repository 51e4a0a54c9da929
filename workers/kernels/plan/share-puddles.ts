import { bestLoad } from './best-load.ts';
import { perMixedPaint, stiffness, washCost } from './family-subset.ts';
import type { FamilyWork } from './family-work.ts';
import type { Ground } from './look-at-puddle.ts';
import { look, lookAtPuddle } from './look-at-puddle.ts';
import { itemsOf, partitions } from './partitions.ts';
import type { PuddleOption } from './puddle-option.ts';

/** One family's share in one wash. */
export interface Stroke {
  readonly option: PuddleOption;
  readonly load: number;
  /** The thinner strength for lighter bands that share the wash. */
  readonly weakLoad: number | null;
}

/** One active family at one wash. */
export interface ActiveFamily {
  readonly work: FamilyWork;
  readonly mask: number;
  readonly ground: Ground;
}

/** Options that are looked at closely, after all were looked at roughly. */
const closely = 10;

interface Exact {
  readonly cost: number;
  readonly stroke: Stroke;
}

function exactStroke(option: PuddleOption, active: ActiveFamily, wash: number): Exact | null {
  const goal = active.work.washes[wash];
  if (!goal) return null;
  lookAtPuddle(option, goal.full, active.ground);
  const full = bestLoad(option, look.load, goal.full, active.ground);
  let cost = full.cost;
  let weakLoad: number | null = null;
  if (goal.weak) {
    lookAtPuddle(option, goal.weak, active.ground);
    const weak = bestLoad(option, look.load, goal.weak, active.ground);
    cost += weak.cost;
    weakLoad = weak.load;
  }
  const area = [...goal.full.targets, ...(goal.weak?.targets ?? [])].reduce(
    (all, { weight }) => all + weight,
    0,
  );
  cost += (perMixedPaint * (option.members.length - 1) + stiffness(full.load)) * area;
  return { cost, stroke: { option, load: full.load, weakLoad } };
}

/** The best puddle for a group of families that share it, each at its own load. */
function puddleFor(
  group: readonly ActiveFamily[],
  usable: readonly number[],
  costs: Float64Array[],
  options: readonly PuddleOption[],
  wash: number,
): { cost: number; strokes: Stroke[] } {
  const rough = usable
    .map((n) => ({ n, cost: costs.reduce((all, row) => all + (row[n] as number), 0) }))
    .filter(({ cost }) => Number.isFinite(cost))
    .sort((a, b) => a.cost - b.cost || a.n - b.n)
    .slice(0, closely);
  let best: { cost: number; strokes: Stroke[] } = { cost: Number.POSITIVE_INFINITY, strokes: [] };
  for (const { n } of rough) {
    const option = options[n] as PuddleOption;
    const exact = group.map((active) => exactStroke(option, active, wash));
    const cost = exact.reduce((all, each) => all + (each?.cost ?? 0), 0);
    if (cost < best.cost)
      best = { cost, strokes: exact.flatMap((each) => (each ? [each.stroke] : [])) };
  }
  return best;
}

/**
 * The puddles of one wash of one passage, at most `puddles` of them: which families share, which paints
 * and parts, and every family's own load. Families share by least loss; all splits are gone through.
 * Answers one stroke a family, null where no puddle can be laid without lightening what is there.
 */
export function sharePuddles(
  families: readonly ActiveFamily[],
  options: readonly PuddleOption[],
  wash: number,
  puddles: number,
): (Stroke | null)[] {
  const costs = families.map(({ work, mask, ground }) => {
    const row = new Float64Array(options.length).fill(Number.POSITIVE_INFINITY);
    for (const [n, option] of options.entries()) {
      if ((option.mask & ~mask) === 0) row[n] = washCost(option, work, wash, ground).cost;
    }
    return row;
  });
  const all = options.map((_, n) => n);
  const known = new Map<number, { cost: number; strokes: Stroke[] }>();
  const solve = (bits: number) => {
    const before = known.get(bits);
    if (before) return before;
    const members = itemsOf(bits);
    const solved = puddleFor(
      members.map((i) => families[i] as ActiveFamily),
      all,
      members.map((i) => costs[i] as Float64Array),
      options,
      wash,
    );
    known.set(bits, solved);
    return solved;
  };
  const groups = Math.min(families.length, puddles);
  const splits = partitions(families.length, groups).filter((split) => split.length === groups);
  let least = Number.POSITIVE_INFINITY;
  let chosen: number[] | undefined;
  for (const split of splits) {
    const cost = split.reduce((sum, bits) => sum + solve(bits).cost, 0);
    if (cost < least) {
      least = cost;
      chosen = split;
    }
  }
  const strokes = new Array<Stroke | null>(families.length).fill(null);
  for (const bits of chosen ?? families.map((_, i) => 1 << i).slice(0, puddles)) {
    const solved = solve(bits);
    for (const [k, i] of itemsOf(bits).entries()) strokes[i] = solved.strokes[k] ?? null;
  }
  return strokes;
}
